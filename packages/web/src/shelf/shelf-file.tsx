import { useEffect, useState } from 'react';
import { dayAndTime } from '../projects/day.js';
import { handOver } from '../state/file.js';
import { versionTexts as say } from '../texts/shelf-versions.js';
import { ReasonForm } from './reason-form.js';
import { deleteFile, fetchVersion, putVersion, type ShelfLine, type ShelfState, statesOf } from './shelf-lines.js';
import { changeShelf } from './shelf-store.js';
import { type TextDifference, textDifference } from './text-difference.js';

const stateOf = ({ shipped, inForce, original }: ShelfLine): string =>
  inForce === null
    ? say.states.away
    : shipped
      ? say.states.shipped
      : original === null
        ? say.states.brought
        : say.states.replaced;

/** One file of the shelf: folded to its name and state; opened, every version with what it changed. */
export function ShelfFile({ line, changed }: { readonly line: ShelfLine; readonly changed: () => Promise<void> }) {
  const [open, setOpen] = useState(false);
  /** The state that is to be put in force again, `back` for what was shipped. */
  const [asking, setAsking] = useState<string | null>(null);
  const done = async (request: Promise<Response>): Promise<string | null> => {
    const wrong = await changeShelf(request);
    if (wrong === null) {
      setAsking(null);
      await changed();
    }
    return wrong;
  };
  const { name, kind, original, shipped, inForce } = line;
  const leave = () => setAsking(null);
  const backTitle = original === null ? say.takeOffOf(name) : say.backOf(name);
  return (
    <li data-file={name}>
      <details className="group" onToggle={(e) => setOpen(e.currentTarget.open)}>
        <summary>
          <span className="title">{name}</span>
          <span className="second">
            {stateOf(line)}
            {line.versions.length > 0 && `, ${dayAndTime(line.versions.at(-1)!.at)}`}
          </span>
        </summary>
        {open && (
          <div className="versions">
            {!shipped && inForce !== null && asking !== 'back' && (
              <p>
                <button type="button" aria-label={backTitle} onClick={() => setAsking('back')}>
                  {original === null ? say.takeOff : say.back}
                </button>
              </p>
            )}
            {asking === 'back' && (
              <ReasonForm what={backTitle} run={(because) => done(deleteFile(line, because))} leave={leave} />
            )}
            <ol aria-label={say.versionsOf(name)}>
              {statesOf(line).map((state, i) => (
                <li key={state.key} aria-current={i === 0 || undefined}>
                  <Version
                    line={line}
                    state={state}
                    newest={i === 0}
                    asking={asking === state.key}
                    ask={() => setAsking(state.key)}
                    leave={leave}
                    again={async (because) => {
                      const text = await fetchVersion(line, state.hash!);
                      const file = state.version?.file;
                      return done(putVersion({ kind, name }, { text, because, ...(file ? { file } : {}) }));
                    }}
                  />
                </li>
              ))}
            </ol>
          </div>
        )}
      </details>
    </li>
  );
}

function titleOf(line: ShelfLine, { version }: ShelfState): string {
  if (version === null) return say.shipped;
  if (version.hash !== null) return version.file ?? say.noFileName;
  return line.original === null ? say.wentAway : say.wentBack;
}

function Version({
  line,
  state,
  newest,
  asking,
  ask,
  leave,
  again,
}: {
  readonly line: ShelfLine;
  readonly state: ShelfState;
  readonly newest: boolean;
  readonly asking: boolean;
  readonly ask: () => void;
  readonly leave: () => void;
  readonly again: (because: string) => Promise<string | null>;
}) {
  const { version, hash } = state;
  const title = titleOf(line, state);
  const when = version === null ? say.states.shipped : dayAndTime(version.at);
  const fileName = line.kind === 'rules' ? `${line.name}.yaml` : line.name;
  const save = async (of: string) =>
    handOver(new Blob([await fetchVersion(line, of)], { type: 'text/yaml' }), fileName);
  return (
    <>
      <p className="head">
        <span className="name">{title}</span>
        {newest && hash !== null && <span className="mark-word">{say.inForce}</span>}
        <span className="second">
          {version !== null && <time dateTime={version.at}>{when}</time>}
          {version !== null && ` ${say.because(version.because)}`}
        </span>
      </p>
      {version !== null && hash !== null && <Difference line={line} state={state} />}
      {hash !== null && !asking && (
        <p className="foot">
          <button type="button" className="quiet" aria-label={say.saveOf(title, when)} onClick={() => void save(hash)}>
            {say.save}
          </button>
          {version !== null && hash !== line.inForce && (
            <button type="button" className="quiet" aria-label={say.againOf(title, when)} onClick={ask}>
              {say.again}
            </button>
          )}
        </p>
      )}
      {asking && <ReasonForm what={say.againOf(title, when)} run={again} leave={leave} />}
    </>
  );
}

/** What a version changed against the one before it, in counts; the names unfold. */
function Difference({ line, state }: { readonly line: ShelfLine; readonly state: ShelfState }) {
  const { hash, before } = state;
  const [told, setTold] = useState<TextDifference | string | null>(null);
  useEffect(() => {
    let gone = false;
    const texts = [before, hash].map(async (each) => (each === null ? '' : fetchVersion(line, each)));
    Promise.all(texts).then(
      ([was = '', is = '']) => gone || setTold(textDifference(line.kind, was, is)),
      (error: unknown) => gone || setTold(error instanceof Error ? error.message : String(error)),
    );
    return () => {
      gone = true;
    };
  }, [line, before, hash]);
  if (told === null) return <p className="second">{say.counting}</p>;
  if (typeof told === 'string') return <p className="trouble-text">{told}</p>;
  const { added, removed, changed, head } = told;
  const words = say.difference(line.kind, added.length, removed.length, changed.length, head);
  if (added.length + removed.length + changed.length === 0) return <p className="second counts">{words}</p>;
  return (
    <details className="counts">
      <summary>{words}</summary>
      <dl>
        {(
          [
            ['added', added],
            ['removed', removed],
            ['changed', changed],
          ] as const
        ).map(
          ([what, ids]) =>
            ids.length > 0 && (
              <div key={what}>
                <dt className="second">{say[what]}</dt>
                <dd>{say.names(ids)}</dd>
              </div>
            ),
        )}
      </dl>
    </details>
  );
}
