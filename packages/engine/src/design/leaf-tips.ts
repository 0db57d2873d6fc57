import type { Vec2 } from '../floor/geometry/vec.js';
import type { DesignRoom } from './types.js';

/** Ends of the swings of the leaves of all doors [m]: the farthest points of quarter circles along the directions of a sheet. */
export const leafTips = ({ doors }: Pick<DesignRoom, 'doors'>): readonly Vec2[] =>
  doors.flatMap(({ leaves }) =>
    leaves.flatMap(({ hinge, leaf, open, closed }) =>
      [open, closed].map((angle): Vec2 => [hinge[0] + leaf * Math.cos(angle), hinge[1] + leaf * Math.sin(angle)]),
    ),
  );
