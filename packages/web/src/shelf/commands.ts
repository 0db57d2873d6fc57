import type { Command } from '../commands/command.js';
import { openLeaf } from '../schedules/state.js';
import { commandTexts } from '../texts/commands.js';
import { scheduleTexts } from '../texts/schedules.js';
import { priceTexts } from '../texts/shelf.js';
import { usePriceList } from './price-list-state.js';

/** What is in force for the project, and the way in for price lists. */
export const shelfCommands: readonly Command[] = [
  ...(['rules', 'catalogue'] as const).map((leaf) => ({
    id: `shelf-${leaf}`,
    title: commandTexts.show(scheduleTexts.titles[leaf]),
    group: commandTexts.groups.views,
    run: () => openLeaf(leaf),
  })),
  {
    id: 'price-list',
    title: priceTexts.title,
    group: commandTexts.groups.brief,
    run: () => {
      openLeaf('prices');
      usePriceList.setState({ open: true });
    },
  },
];
