import { thingsIn } from '../brief/find.js';
import { goToThing } from '../plan/go-to.js';
import { selectInForm, useWorkbench } from '../state/store.js';
import { reveal } from '../steps/reveal.js';
import { commandTexts as say } from '../texts/commands.js';
import type { Answerable } from './answers.js';

/** Every thing of the brief by its name: chosen, it is taken in hand where it stands, else in its form. */
export function answerableThings(): readonly Answerable[] {
  const { data, computed } = useWorkbench.getState();
  return thingsIn(data).map(({ id, name, path }) => ({
    id: `thing-${id}`,
    title: name === id ? id : `${name} (${id})`,
    group: say.thing,
    run: () => {
      if (computed) goToThing(computed.design, id);
      else {
        selectInForm(id);
        reveal(path);
      }
    },
  }));
}
