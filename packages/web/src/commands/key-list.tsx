import { useEffect, useRef } from 'react';
import { commandTexts as say } from '../texts/commands.js';
import { allCommands } from './all.js';
import { showKeys, useAskLine } from './ask-store.js';
import type { Command } from './command.js';
import { setSingleKeys, useKeySettings } from './key-settings.js';

/** Every key, by what it belongs to. */
export function KeyList() {
  const open = useAskLine((s) => s.keyList);
  const single = useKeySettings((s) => s.single);
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    if (open) dialog.current?.showModal();
    else dialog.current?.close();
  }, [open]);
  return (
    <dialog ref={dialog} className="key-list" aria-labelledby="key-list-title" onClose={() => showKeys(false)}>
      {open && (
        <>
          <header>
            <h2 id="key-list-title">{say.keyList}</h2>
            <button type="button" onClick={() => showKeys(false)}>
              {say.close}
            </button>
          </header>
          <p className="second">{say.keyListHint}</p>
          <label className="single-keys">
            <input type="checkbox" checked={single} onChange={(e) => setSingleKeys(e.target.checked)} />
            {say.singleKeys}
          </label>
          <div className="key-groups">
            {groupsOf(allCommands()).map(([group, commands]) => (
              <section key={group}>
                <h3>{group}</h3>
                <dl>
                  {commands.map((each) => (
                    <div key={each.id}>
                      <dt>{each.title}</dt>
                      <dd>
                        <kbd>{each.keys}</kbd>
                      </dd>
                    </div>
                  ))}
                </dl>
              </section>
            ))}
          </div>
        </>
      )}
    </dialog>
  );
}

function groupsOf(commands: readonly Command[]): readonly (readonly [string, readonly Command[]])[] {
  const groups = new Map<string, Command[]>();
  for (const each of commands) {
    if (!each.keys) continue;
    const list = groups.get(each.group) ?? [];
    list.push(each);
    groups.set(each.group, list);
  }
  return [...groups];
}
