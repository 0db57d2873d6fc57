import type { Path } from '../reading/path.js';
import type { Brief } from './schema.js';

export type ThingKind =
  | 'door'
  | 'window'
  | 'column'
  | 'beam'
  | 'obstruction'
  | 'sprinkler'
  | 'detector'
  | 'exit sign'
  | 'board'
  | 'air terminal'
  | 'luminaire'
  | 'table'
  | 'equipment'
  | 'laser'
  | 'enclosure'
  | 'run'
  | 'cover'
  | 'sign'
  | 'stop'
  | 'interlock'
  | 'sensor'
  | 'phase';

/** Something of the brief that has an id, and where it is written. */
export interface Thing {
  readonly id: string;
  readonly kind: ThingKind;
  readonly path: Path;
}

/** The room itself may be named where a place is asked for; nothing else may be called so. */
export const roomId = 'room';

/** Everything with an id, in the order of the brief. */
export function thingsOf(brief: Brief): Thing[] {
  const { room, needs = {}, layout = {} } = brief;
  const of = (kind: ThingKind, list: readonly { readonly id: string }[] | undefined, ...path: Path): Thing[] =>
    (list ?? []).map(({ id }, index) => ({ id, kind, path: [...path, index] }));
  return [
    ...of('door', room.doors, 'room', 'doors'),
    ...of('window', room.windows, 'room', 'windows'),
    ...of('column', room.columns, 'room', 'columns'),
    ...of('beam', room.beams, 'room', 'beams'),
    ...of('obstruction', room.obstructions, 'room', 'obstructions'),
    ...of('sprinkler', room.sprinklers, 'room', 'sprinklers'),
    ...of('detector', room.detectors, 'room', 'detectors'),
    ...of('exit sign', room.exitSigns, 'room', 'exitSigns'),
    ...of('board', room.boards, 'room', 'boards'),
    ...of('air terminal', room.airTerminals, 'room', 'airTerminals'),
    ...of('luminaire', room.luminaires, 'room', 'luminaires'),
    ...of('table', brief.tables, 'tables'),
    ...(brief.tables ?? []).flatMap((table, index) => of('equipment', table.equipment, 'tables', index, 'equipment')),
    ...of('equipment', brief.equipment, 'equipment'),
    ...of('laser', brief.lasers, 'lasers'),
    ...of('enclosure', layout.enclosures, 'layout', 'enclosures'),
    ...of('run', layout.runs, 'layout', 'runs'),
    ...of('cover', layout.covers, 'layout', 'covers'),
    ...of('sign', layout.signs, 'layout', 'signs'),
    ...of('stop', layout.stops, 'layout', 'stops'),
    ...of('interlock', layout.interlocks, 'layout', 'interlocks'),
    ...of('sensor', layout.sensors, 'layout', 'sensors'),
    ...of('phase', needs.phases, 'needs', 'phases'),
  ];
}
