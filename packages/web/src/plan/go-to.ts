import type { Design, Finding, Vec2 } from '../engine/contract.js';
import { focusFinding, select, show, useWorkbench } from '../state/store.js';
import { extentOf, extentOfShape, placeOfFinding } from './places.js';
import { fitted } from './view.js';
import { setPlanView, usePlanView } from './view-store.js';

/** Around what is looked at, so that it is seen in its place [m]. */
const around = 0.8;
/** Room for dimensions, pixels. */
const margin = 80;

/** Brings plan points into the middle of the sheet, near enough to be read. */
export function lookAt(points: readonly Vec2[]): void {
  const { size } = usePlanView.getState();
  if (points.length === 0 || size.width === 0) return;
  const [xs, ys] = [points.map((p) => p[0]), points.map((p) => p[1])];
  const box = {
    min: [Math.min(...xs) - around, Math.min(...ys) - around] as const,
    max: [Math.max(...xs) + around, Math.max(...ys) + around] as const,
  };
  setPlanView(fitted(box, size, margin));
}

/** Shows a thing in the plan and takes it in hand. */
export function goToThing(design: Design, id: string): void {
  const { view } = useWorkbench.getState();
  if (view !== 'plan' && view !== 'space') show('plan');
  select(id);
  lookAt(extentOf(design, id));
}

/** Shows where a finding is, with what it is about around it. */
export function goToFinding(finding: Finding): void {
  const { computed, view } = useWorkbench.getState();
  const place = computed ? placeOfFinding(computed, finding) : undefined;
  if (!computed || !place) return;
  if (view !== 'plan') show('plan');
  lookAt([place, ...extentOf(computed.design, finding.subject)]);
  focusFinding(finding.id);
}

/** Shows where some parts are. */
export function goToParts(ids: readonly string[]): void {
  const { computed, view } = useWorkbench.getState();
  if (view !== 'plan' && view !== 'space') show('plan');
  const wanted = new Set(ids);
  const parts = computed?.design.parts.filter((part) => wanted.has(part.id)) ?? [];
  lookAt(parts.flatMap((part) => extentOfShape(part.shape)));
}
