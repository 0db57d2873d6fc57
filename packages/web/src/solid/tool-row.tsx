import { type KeyboardEvent, useEffect, useRef } from 'react';
import type { Design } from '../engine/contract.js';
import { texts } from '../texts.js';
import { ApartSlip } from './apart-slip.js';
import type { AssemblyStep } from './assembly-order.js';
import { CutSlip } from './cut-slip.js';
import { ShownSlip } from './shown-slip.js';
import { openTool, type SpaceState, showThings, type Tool, tools, useSpace } from './space-store.js';
import { StepsSlip } from './steps-slip.js';
import { WalkSlip } from './walk-slip.js';

interface ToolRowProps {
  readonly design: Design;
  readonly steps: readonly AssemblyStep[];
}

/** What can be done in the space, in words along the lower edge; the slip of one of them lies open over it. */
export function ToolRow({ design, steps }: ToolRowProps) {
  const tool = useSpace((s) => s.tool);
  const things = useSpace((s) => s.things);
  const inUse = useSpace(useOf);
  const onFoot = useSpace((s) => s.walk !== null);
  const row = useRef<HTMLDivElement>(null);
  const close = (event: KeyboardEvent) => {
    if (event.key !== 'Escape' || !tool) return;
    event.preventDefault();
    openTool(null);
    row.current?.querySelector<HTMLElement>(`[data-tool="${tool}"]`)?.focus();
  };
  return (
    <div className="space-tools" role="toolbar" aria-label={texts.space.tools} ref={row} onKeyDown={close}>
      {tool && (
        <div className="slip" id="space-slip">
          <Slip tool={tool} design={design} steps={steps} />
        </div>
      )}
      <div className="row">
        {tools.map((name) => (
          <button
            key={name}
            type="button"
            data-tool={name}
            className={inUse.includes(name) ? 'in-use' : undefined}
            aria-expanded={tool === name}
            aria-controls={tool === name ? 'space-slip' : undefined}
            onClick={() => openTool(tool === name ? null : name)}
          >
            {texts.space.tool[name]}
          </button>
        ))}
        <button type="button" aria-pressed={things} onClick={() => showThings(!things)}>
          {texts.space.tool.things}
        </button>
        <span className="hint second" aria-hidden="true">
          {onFoot ? texts.space.hintOnFoot : texts.space.hint}
        </span>
      </div>
    </div>
  );
}

/** Tools that change the drawing now, as one text, so that it is compared by value. */
const useOf = ({ cuts, walk, apart, step }: SpaceState): string =>
  [cuts.length > 0 && 'cut', walk && 'walk', apart > 0 && 'apart', step !== null && 'steps'].filter(Boolean).join(' ');

function Slip({ tool, design, steps }: { readonly tool: Tool } & ToolRowProps) {
  const slip = useRef<HTMLDivElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: each slip takes the focus when it is opened
  useEffect(() => slip.current?.querySelector<HTMLElement>('button, input')?.focus({ preventScroll: true }), [tool]);
  return (
    <div ref={slip} className={`slip-of-${tool}`}>
      {tool === 'cut' && <CutSlip room={design.room} />}
      {tool === 'walk' && <WalkSlip design={design} />}
      {tool === 'apart' && <ApartSlip />}
      {tool === 'steps' && <StepsSlip design={design} steps={steps} />}
      {tool === 'shown' && <ShownSlip />}
    </div>
  );
}
