import type { Design } from '@cloche/engine';
import { ink, lineWidth, narrow, secondInk, verdictInk } from '../inks.js';
import { box, ring, text, textWidth, wrapped } from '../marks.js';
import type { Mark, PaperPoint } from '../types.js';

export const generalNotes = (design: Design): string[] => [
  'Dimensions in millimetres; do not scale.',
  'Origin: inside south-west corner, finished floor 0.000.',
  'A proposal: laser safety officer, licensed engineer, electrician and fire authority decide; local codes come first.',
  ...(design.project.invented ? ['Invented data: no real room or parts.'] : []),
];

export function notesMarks(notes: readonly string[], x: number, y: number, width: number): Mark[] {
  const marks: Mark[] = [text([x, y + 5], 'Notes', 2.5, { medium: true })];
  let at = y + 9.6;
  notes.forEach((note, i) => {
    wrapped(note, 2.5, width - 5).forEach((words, l) => {
      if (l === 0) marks.push(text([x, at], `${i + 1}`, 2.5, { colour: secondInk }));
      marks.push(text([x + 5, at], words, 2.5));
      at += 3.6;
    });
    at += 0.6;
  });
  return marks;
}

/** North arrow: y of the room runs north. */
export function northArrow([x, y]: PaperPoint): Mark[] {
  return [
    ring(
      [
        [x, y - 9],
        [x + 3, y],
        [x, y - 2],
      ],
      narrow,
      ink,
    ),
    ring(
      [
        [x, y - 9],
        [x - 3, y],
        [x, y - 2],
      ],
      narrow,
      '#FFFFFF',
    ),
    text([x, y - 10.2], 'N', 3.5, { anchor: 'middle', medium: true }),
  ];
}

/** Room for the graphic scale at the scales of rooms, with the scale in numbers beside it [mm]. */
export const scaleBarRoom = 83;

/** Whole metres in alternating fields, set off from the right; prints made "to fit" still show their scale by it. */
export function scaleBar([right, y]: PaperPoint, scale: number): Mark[] {
  const metre = 1000 / scale;
  const fields = Math.max(1, Math.min(5, Math.floor(70 / metre)));
  const x = right - fields * metre - 18;
  const marks: Mark[] = [];
  for (let i = 0; i < fields; i++) {
    marks.push(
      box(x + i * metre, y, metre, 1.6, { width: lineWidth.narrow, colour: ink }, i % 2 === 0 ? ink : '#FFFFFF'),
    );
    marks.push(text([x + i * metre, y + 5], String(i), 2.5, { anchor: 'middle' }));
  }
  marks.push(text([x + fields * metre, y + 5], `${fields} m`, 2.5, { anchor: 'middle' }));
  marks.push(text([x + fields * metre + 6, y + 5], `1:${scale}`, 2.5, { colour: secondInk }));
  return marks;
}

/** The status of every unsigned sheet, in the upper right corner of the drawing space. */
export function statusStamp([right, top]: PaperPoint): Mark[] {
  const words = 'NOT APPROVED';
  const width = textWidth(words, 3.5, true) + 6;
  const pen = { width: lineWidth.wide, colour: verdictInk.fails };
  return [
    box(right - width, top, width, 7.5, pen, '#FFFFFF'),
    text([right - width / 2, top + 5.5], words, 3.5, { anchor: 'middle', medium: true, colour: verdictInk.fails }),
  ];
}
