import { type KeyboardEvent, useEffect, useId, useMemo, useRef } from 'react';
import type { Design } from '../engine/contract.js';
import { pointParts, select, useWorkbench } from '../state/store.js';
import { partLines } from '../steps/part-lines.js';
import { texts } from '../texts.js';
import { lookFrom } from './space-store.js';
import { type NamedThing, thingsOf } from './things.js';

/** Everything in the space as lists for the keyboard: things to take in hand, and the pieces of the thing in hand. */
export function ThingsList({ design }: { readonly design: Design }) {
  const kinds = useMemo(() => thingsOf(design), [design]);
  const all = useMemo(() => [...kinds.values()].flat(), [kinds]);
  const selected = useWorkbench((s) => s.selected);
  if (all.length === 0) return <p className="things">{texts.space.things.none}</p>;
  const inHand = all.find((t) => t.id === selected);
  return (
    <aside className="things" aria-label={texts.space.tool.things}>
      <ListBox
        label={texts.space.things.label}
        groups={[...kinds].map(([kind, things]) => ({ name: texts.space.things.kinds[kind], options: things }))}
        chosen={inHand?.id ?? null}
        choose={select}
        enter={() => lookFrom('hand')}
      />
      {inHand && <PiecesList design={design} thing={inHand} />}
    </aside>
  );
}

/** Pieces of one thing, equal ones in one line; the line chosen is marked in the drawing. */
function PiecesList({ design, thing }: { readonly design: Design; readonly thing: NamedThing }) {
  const itemNames = useWorkbench((s) => s.computed?.itemNames);
  const pointed = useWorkbench((s) => s.pointedParts);
  const groups = useMemo(
    () =>
      [...partLines(design.parts.filter((p) => p.of === thing.id && p.shape.shape !== 'loose'))].map(
        ([name, lines]) => ({
          name,
          options: lines.map((line) => ({
            id: line.key,
            ids: line.ids,
            ...(line.mark ? { mark: line.mark } : {}),
            name: itemNames?.[line.item] ?? line.item,
            count: line.count,
          })),
        }),
      ),
    [design.parts, thing.id, itemNames],
  );
  const lines = groups.flatMap((g) => g.options);
  if (lines.length === 0) return null;
  return (
    <div className="pieces">
      <h3>{texts.space.things.pieces(thing.name)}</h3>
      <ListBox
        label={`${texts.space.things.pieces(thing.name)}. ${texts.space.things.piecesHint}`}
        groups={groups}
        chosen={lines.find((l) => pointed.has(l.ids[0]!))?.id ?? null}
        choose={(id) => pointParts(lines.find((l) => l.id === id)?.ids ?? [])}
      />
    </div>
  );
}

interface Option extends NamedThing {
  readonly mark?: string;
  readonly count?: number;
}

interface ListBoxProps {
  readonly label: string;
  readonly groups: readonly { readonly name: string; readonly options: readonly Option[] }[];
  readonly chosen: string | null;
  readonly choose: (id: string | null) => void;
  readonly enter?: () => void;
}

/** A list in which the arrow keys choose; what is chosen elsewhere is chosen here. */
function ListBox({ label, groups, chosen, choose, enter }: ListBoxProps) {
  const base = useId();
  const list = useRef<HTMLDivElement>(null);
  const all = groups.flatMap((g) => g.options);
  const place = all.findIndex((o) => o.id === chosen);
  useEffect(() => {
    if (place >= 0) list.current?.querySelector('[aria-selected="true"]')?.scrollIntoView({ block: 'nearest' });
  }, [place]);
  const onKeyDown = (event: KeyboardEvent) => {
    const to = { ArrowDown: place + 1, ArrowUp: place < 0 ? all.length - 1 : place - 1, Home: 0, End: all.length - 1 }[
      event.key
    ];
    if (to !== undefined) choose(all[Math.min(all.length - 1, Math.max(0, to))]!.id);
    else if (event.key === 'Enter') enter?.();
    else if (event.key === 'Escape') choose(null);
    else return;
    event.preventDefault();
  };
  const optionId = (i: number) => `${base}-${i}`;
  return (
    <div
      ref={list}
      className="list-box"
      role="listbox"
      aria-label={label}
      tabIndex={0}
      {...(place >= 0 ? { 'aria-activedescendant': optionId(place) } : {})}
      onKeyDown={onKeyDown}
    >
      {groups.map(({ name, options }) => (
        // biome-ignore lint/a11y/useSemanticElements: a group of options in a list is no fieldset
        <div key={name} role="group" aria-label={name}>
          <span className="caption" aria-hidden="true">
            {name}
          </span>
          {options.map((option) => (
            // biome-ignore lint/a11y/useFocusableInteractive: the list has the focus, its keys choose
            // biome-ignore lint/a11y/useKeyWithClickEvents: the list has the focus, its keys choose
            <div
              key={option.id}
              id={optionId(all.indexOf(option))}
              className="option"
              role="option"
              aria-selected={option.id === chosen}
              onClick={() => choose(option.id === chosen ? null : option.id)}
            >
              <span>
                {option.mark && <b>{option.mark} </b>}
                {option.name}
              </span>
              {option.count !== undefined && (
                <span className="count">
                  <span className="visually-hidden">, </span>
                  {option.count}
                </span>
              )}
            </div>
          ))}
        </div>
      ))}
    </div>
  );
}
