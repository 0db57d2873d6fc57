import { lengthLike, metresOf } from '../lengths.js';
import { valueAt } from '../path.js';
import {
  choice,
  type Field,
  further,
  heart,
  idField,
  item,
  onCard,
  only,
  place,
  quantity,
  type Rows,
  reference,
  references,
  whole,
  words,
  yesNo,
} from '../shapes.js';
import { sides } from './needs.js';

const sideFields = sides.flatMap((side): Field[] => [
  heart(`sides.${side}`, choice(`sides.${side}.closure`, `${side} side`, ['curtain', 'strip', 'rigid panel', 'open'])),
  only(`sides.${side}.closure`, 'curtain', item(`sides.${side}.item`, `${side} curtain`, ['cloth'])),
  only(`sides.${side}.closure`, 'strip', item(`sides.${side}.item`, `${side} strips`, ['cloth'], 'clear strip')),
  only(`sides.${side}.closure`, 'rigid panel', item(`sides.${side}.item`, `${side} panel`, ['sheet'])),
]);

/** What can be typed for each thing of the layout, by its list. */
export const layoutFields: Readonly<Record<string, readonly Field[]>> = {
  enclosures: [
    idField,
    words('name', 'name'),
    ...onCard(
      choice('kind', 'kind', ['close', 'walk-in']),
      references('around', 'around', 'tables'),
      quantity('gap', 'gap to table'),
      quantity('clearHeight', 'clear height'),
    ),
    ...sideFields,
    ...onCard(item('unit', 'fan filter unit', ['fan filter unit']), whole('unitCount', 'units')),
    choice('feet', 'feet', ['levelling', 'foot plate', 'caster']),
    ...further(
      quantity('hemGap', 'hem gap'),
      ...sides.map((side) => quantity(`gaps.${side}`, `gap on the ${side}`)),
      item('profile', 'profile', ['profile']),
      item('light', 'light', ['light strip']),
      whole('lightCount', 'lights'),
    ),
  ],
  runs: [
    idField,
    words('name', 'name'),
    ...onCard(
      choice('kind', 'kind', ['bay', 'partition', 'shelf']),
      choice('hung', 'hung from', ['ceiling', 'wall', 'floor post', 'frame', 'shelf']),
      only('hung', 'frame', reference('on', 'carried by', 'enclosures')),
      only('hung', 'shelf', reference('on', 'carried by table', 'tables')),
      quantity('trackHeight', 'track height'),
      quantity('hemGap', 'hem gap'),
      item('cloth', 'cloth', ['cloth']),
    ),
    yesNo('closed', 'closed'),
    choice('corner', 'corners', ['curve', 'connector']),
    item('track', 'track', ['track']),
  ],
  covers: [idField, reference('over', 'over', 'windows', 'doors'), item('item', 'cover', ['cover'])],
  signs: [
    idField,
    reference('door', 'at door', 'doors'),
    yesNo('lit', 'lit'),
    item('item', 'sign', ['sign']),
    quantity('height', 'height'),
  ],
  stops: [
    idField,
    ...onCard(...place, quantity('height', 'height')),
    item('item', 'stop button', ['interlock part'], 'stop button'),
  ],
  interlocks: [
    idField,
    reference('on', 'on', 'doors', 'enclosures', 'runs'),
    item('item', 'contact', ['interlock part']),
    yesNo('defeatable', 'can be bridged'),
  ],
  sensors: [
    idField,
    reference('where', 'where', 'enclosures', 'runs', 'tables', 'room'),
    ...onCard(...place, quantity('height', 'height')),
    item('item', 'sensor', ['sensor']),
  ],
};

const along = (rows: readonly unknown[], key: string): number =>
  Math.max(0, ...rows.map((row) => metresOf(valueAt(row, [key])) ?? 0));

export const layoutRows: Readonly<Record<string, readonly Rows[]>> = {
  runs: [
    {
      path: ['path'],
      title: 'Path of the track, corner by corner',
      one: 'a corner',
      least: 2,
      columns: [quantity('0', 'from west'), quantity('1', 'from south')],
      // Half way between the last corner and the first keeps a bay free of crossings; a partition goes on straight.
      row: (rows, data, base) => {
        const closed = valueAt(data, [...base, 'closed']) === true;
        const [before, last, first] = [rows.at(-2), rows.at(-1), rows[0]];
        return [0, 1].map((k) => {
          const at = (row: unknown) => metresOf(valueAt(row, [k])) ?? 0;
          const next = closed ? (at(last) + at(first)) / 2 : at(last) + (at(last) - at(before)) / 4;
          return lengthLike(valueAt(last, [k]), next);
        });
      },
    },
    {
      path: ['openings'],
      title: 'Openings along the path',
      one: 'an opening',
      columns: [quantity('at', 'middle at'), quantity('width', 'width')],
      row: (rows) => ({ at: `${Number((along(rows, 'at') + 1).toFixed(2))} m`, width: '0.9 m' }),
    },
    {
      path: ['noSupport'],
      title: 'Stretches where nothing may be fixed',
      one: 'a stretch',
      columns: [quantity('from', 'from'), quantity('to', 'to'), words('because', 'because')],
      row: (rows) => {
        const from = along(rows, 'to');
        return { from: `${from.toFixed(2)} m`, to: `${(from + 0.3).toFixed(2)} m`, because: 'Say why.' };
      },
    },
  ],
};
