import type { Profile } from '../catalogue/schema.js';
import type { Vec2 } from '../floor/geometry/vec.js';
import { sectionProperties } from '../frame/index.js';

const metres = (ring: readonly (readonly [number, number])[]): Vec2[] => ring.map(([x, y]) => [x / 1000, y / 1000]);

const known = new WeakMap<Profile, ReturnType<typeof sectionProperties>>();

/** Section of a profile from its drawn outline; kept with the profile, because an outline has hundreds of corners. */
export function profileSection(profile: Profile): ReturnType<typeof sectionProperties> {
  const before = known.get(profile);
  if (before) return before;
  const section = sectionProperties({ outer: metres(profile.outline.outer), holes: profile.outline.holes.map(metres) });
  known.set(profile, section);
  return section;
}
