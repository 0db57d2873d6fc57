export { type BoxOptions, snapBox } from './box.js';
export { snapField } from './field.js';
export { snapPoint } from './point.js';
export { allSnapKinds, snapOptions, useSnapSettings } from './settings.js';
export { hideSnap, SnapLayer, showSnap, useSnapping } from './shown.js';
export { SnapMarks } from './snap-marks.js';
export { SnapSwitch } from './snap-switch.js';
export type { SnapField, SnapKind, SnapOptions, Snapped, SnapReason } from './types.js';
