import { listAt, shownText, valueAt } from '../brief/path.js';
import type { Addable, Adding } from '../brief/templates.js';
import { addEntry, editObject, selectInForm, useWorkbench } from '../state/store.js';
import { reveal } from './reveal.js';

/** Adds a thing, takes it in hand and opens its numbers. */
export function add(what: Addable, adding: Adding): void {
  const { data, computed } = useWorkbench.getState();
  const entry = adding.entry({ data, design: computed?.design });
  if (what.single) editObject(what.list, entry);
  else addEntry(what.list, entry);
  const id = shownText(valueAt(entry, ['id']));
  if (id !== '') selectInForm(id);
  reveal(what.single ? what.list : [...what.list, listAt(useWorkbench.getState().data, what.list).length - 1]);
}
