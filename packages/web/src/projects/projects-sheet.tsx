import { type DragEvent, useEffect, useRef, useState } from 'react';
import { ShelfButton } from '../shelf/shelf-dialog.js';
import { useWorkbench } from '../state/store.js';
import { projectTexts as say } from '../texts/projects.js';
import { versionTexts } from '../texts/shelf-versions.js';
import type { ProjectLine } from './api.js';
import { Bin } from './bin.js';
import { ProjectCard } from './project-card.js';
import { attempt, useProjects } from './projects-store.js';
import { createFresh, createFrom, putBack, takeIn } from './take-in.js';

/** Fewer can be taken in at a glance. */
const searchedFrom = 7;

/** All projects of this machine, as the small sheets of a plan chest. */
export function ProjectsSheet() {
  const { lines, bin, told, takenOut } = useProjects();
  const trouble = useWorkbench((s) => s.trouble);
  const [words, setWords] = useState('');
  const drop = useDrop();
  const shown = found(lines ?? [], words);
  return (
    <main className="paper chest" data-dropping={drop.over || undefined} {...drop.on}>
      <header>
        <div>
          <h1>{say.title}</h1>
          <p className="second">{drop.over ? say.drop : say.about}</p>
        </div>
        <div className="chest-actions">
          <button type="button" className="main-action" onClick={() => attempt(createFresh)}>
            {say.create}
          </button>
          <ExampleChoice />
          <ImportButton />
          <ShelfButton label={versionTexts.open} />
        </div>
      </header>
      <div className="chest-told" role="status">
        {trouble ?? told}
        {takenOut !== null && <PutBack id={takenOut} />}
      </div>
      {(lines?.length ?? 0) >= searchedFrom && (
        <search className="chest-search">
          <input
            type="search"
            aria-label={say.search}
            placeholder={say.search}
            value={words}
            onChange={(e) => setWords(e.target.value)}
          />
          <span className="second" role="status">
            {words.trim() === '' ? '' : shown.length === 0 ? say.noneFound(words.trim()) : say.found(shown.length)}
          </span>
        </search>
      )}
      {lines?.length === 0 && <Empty />}
      <ul className="small-sheets" aria-label={say.list}>
        {shown.map((project) => (
          <ProjectCard key={project.id} project={project} />
        ))}
      </ul>
      {bin.length > 0 && <Bin projects={bin} />}
    </main>
  );
}

const found = (lines: readonly ProjectLine[], words: string): readonly ProjectLine[] => {
  const wanted = words.toLowerCase().split(/\s+/).filter(Boolean);
  return lines.filter(({ name }) => wanted.every((word) => name.toLowerCase().includes(word)));
};

function Empty() {
  return (
    <section className="chest-empty">
      <h2>{say.aboutEmpty}</h2>
      <p>{say.emptyHint}</p>
    </section>
  );
}

function ExampleChoice() {
  const examples = useWorkbench((s) => s.examples);
  const open = (name: string) => {
    const example = examples.find((each) => each.name === name);
    if (example) void attempt(() => createFrom(example.text));
  };
  return (
    <select aria-label={say.chooseExample} value="" onChange={(e) => open(e.target.value)}>
      <option value="">{say.fromExample}</option>
      {examples.map(({ name, title }) => (
        <option key={name} value={name}>
          {title}
        </option>
      ))}
    </select>
  );
}

function ImportButton() {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" onClick={() => input.current?.click()}>
        {say.import}
      </button>
      <input
        ref={input}
        type="file"
        accept=".yaml,.yml,.json,.zip"
        hidden
        aria-label={say.import}
        onChange={(e) => {
          const file = e.target.files?.[0];
          if (file) void attempt(() => takeIn(file));
          e.target.value = '';
        }}
      />
    </>
  );
}

/** A file dropped anywhere on the sheet. */
function useDrop() {
  const [over, setOver] = useState(false);
  return {
    over,
    on: {
      onDragOver: (event: DragEvent) => {
        event.preventDefault();
        setOver(true);
      },
      onDragLeave: (event: DragEvent) => {
        if (event.target === event.currentTarget) setOver(false);
      },
      onDrop: (event: DragEvent) => {
        event.preventDefault();
        setOver(false);
        const file = event.dataTransfer.files[0];
        if (file) void attempt(() => takeIn(file));
      },
    },
  };
}

/** Stands where the eye and the keyboard are after something was taken out. */
function PutBack({ id }: { readonly id: string }) {
  const button = useRef<HTMLButtonElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: each project that is taken out takes the focus anew
  useEffect(() => button.current?.focus(), [id]);
  return (
    <button ref={button} type="button" className="quiet" onClick={() => attempt(() => putBack(id))}>
      {say.putBack}
    </button>
  );
}
