import { closestOnSegment, distance2, edges, type Ring, sub2, unit2, type Vec2 } from '@cloche/engine';
import { metresOf } from '../../brief/lengths.js';
import { valueAt } from '../../brief/path.js';
import { type Addable, surveyLists } from '../../brief/templates.js';
import { wallThickness } from '../../plan/wall-band.js';
import { drawingTexts } from '../../texts/drawing.js';
import { writtenStretch } from '../inside.js';
import { lengthText } from '../length-text.js';
import { outlineOf } from '../rewall.js';
import type { Scene } from '../scene.js';
import { inwardNormals, wallNames } from '../snap/wall-names.js';
import type { Aim, Tool } from '../tool.js';

const { onWall: say } = drawingTexts.tools;

interface Place {
  readonly wall: number;
  /** From the first corner of the wall to the near edge. */
  readonly at: number;
  readonly length: number;
  readonly width: number;
  readonly from: Vec2;
  readonly along: Vec2;
}

/** The walls are numbered by the brief, whose outline is drawn as it is written. */
const wallsOf = ({ data, design }: Scene): Ring => {
  const outline = outlineOf(data);
  return outline.length > 2 ? outline : design.room.outline;
};

/** A stretch of the wall nearest to the pointer, its middle as near to it as the wall allows; typed distances hold. */
function placeOn(width: number, { at, typed }: Aim, scene: Scene): Place {
  const walls = edges(wallsOf(scene));
  const distances = walls.map(({ from, to }) => distance2(closestOnSegment(at, from, to), at));
  const wall = distances.indexOf(Math.min(...distances));
  const { from, to } = walls[wall]!;
  const length = distance2(from, to);
  const along = unit2(sub2(to, from));
  const middle = (at[0] - from[0]) * along[0] + (at[1] - from[1]) * along[1];
  const asked = typed.near ?? (typed.far === undefined ? middle - width / 2 : length - width - typed.far);
  const within = Math.min(Math.max(0, asked), Math.max(0, length - width));
  // A typed distance that does not fit is told when it is put, not made to fit.
  return { wall, at: typed.near === undefined && typed.far === undefined ? within : asked, length, width, from, along };
}

const pointOn = ({ from, along }: Place, t: number): Vec2 => [from[0] + along[0] * t, from[1] + along[1] * t];

function stretchRing(place: Place, inward: Vec2): Ring {
  const [a, b] = [pointOn(place, place.at), pointOn(place, place.at + place.width)];
  const out = (p: Vec2): Vec2 => [p[0] - inward[0] * wallThickness, p[1] - inward[1] * wallThickness];
  return [a, b, out(b), out(a)];
}

/** Something in a wall: it slides along the wall under the pointer. */
function onWallTool(id: string, what: Addable, keys?: string): Tool<null> {
  const adding = what.adds[0]!;
  const template = (scene: Scene) => adding.entry(scene);
  const widthOf = (scene: Scene) => metresOf(valueAt(template(scene), ['width'])) ?? 1;
  const placed = (aim: Aim, scene: Scene) => placeOn(widthOf(scene), aim, scene);
  return {
    id,
    title: adding.one,
    group: 'survey',
    ...(keys ? { keys } : {}),
    slides: true,
    start: null,
    enough: 1,
    hint: () => say.hint(adding.one),
    fields: (_, aim, scene) => {
      const place = placed(aim, scene);
      return [
        { id: 'near', label: say.near, kind: 'length', value: place.at },
        { id: 'far', label: say.far, kind: 'length', value: place.length - place.width - place.at },
      ];
    },
    place: (_, aim, scene) => {
      const place = placed(aim, scene);
      return pointOn(place, place.at + place.width / 2);
    },
    show: (_, aim, scene) => {
      const place = placed(aim, scene);
      const inward = inwardNormals(wallsOf(scene))[place.wall]!;
      const [a, b] = [pointOn(place, place.at), pointOn(place, place.at + place.width)];
      const end = pointOn(place, place.length);
      const far = place.length - place.width - place.at;
      return {
        rings: [stretchRing(place, inward)],
        dimensions: [
          { from: place.from, to: a, text: lengthText(place.at, scene.units), field: 'near' },
          { from: b, to: end, text: lengthText(far, scene.units), field: 'far' },
        ].filter(({ from, to }) => distance2(from, to) > 1e-3),
      };
    },
    put: (_, aim, scene) => {
      const place = placed(aim, scene);
      const name = wallNames(wallsOf(scene))[place.wall]!;
      const [size, length] = [lengthText(place.width, scene.units), lengthText(place.length, scene.units)];
      if (place.width > place.length) return { kind: 'no', why: say.tooShort(name, length, size) };
      if (place.at < -1e-7 || place.at + place.width > place.length + 1e-7)
        return { kind: 'no', why: say.past(name, length) };
      const entry = {
        ...(template(scene) as object),
        wall: place.wall,
        ...writtenStretch(place.at, place.width, place.length, scene.units),
      };
      const says = say.done(String(valueAt(entry, ['id'])), name, lengthText(place.at, scene.units));
      return { kind: 'done', edit: { kind: 'entry', list: what.list, entry }, says };
    },
  };
}

export const onWallTools = [
  onWallTool('put-door', surveyLists.doors, 'D'),
  onWallTool('put-window', surveyLists.windows, 'W'),
  onWallTool('put-board', surveyLists.boards),
] as const;
