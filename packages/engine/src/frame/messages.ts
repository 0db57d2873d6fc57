import { argumentProblem, type Problem } from '../floor/problem.js';

const finiteText = (value: number) => String(value);

export const frameMessages = {
  number: (argument: string, value: number): Problem =>
    argumentProblem(
      'frame/not-a-number',
      argument,
      `${argument} is ${finiteText(value)}; a finite number is needed.`,
      `Give ${argument} as a number.`,
    ),
  negative: (argument: string, value: number, unit: string): Problem =>
    argumentProblem(
      'frame/negative',
      argument,
      `${argument} is ${value} ${unit}; it cannot be below zero.`,
      `Give ${argument} as zero or more, in ${unit}.`,
    ),
  ringPoints: (ring: string): Problem =>
    argumentProblem(
      'frame/section-points',
      ring,
      `The ring ${ring} has fewer than three different points with finite coordinates.`,
      'Give at least three corners.',
    ),
  ringArea: (ring: string, area: number): Problem =>
    argumentProblem(
      'frame/section-area',
      ring,
      `The ring ${ring} holds ${area} m2; a section needs more than 1e-12 m2.`,
      'Check the unit of the outline: the points are metres here.',
    ),
  ringCrosses: (ring: string, first: number, second: number): Problem =>
    argumentProblem(
      'frame/section-self-crossing',
      ring,
      `Edges ${first} and ${second} of the ring ${ring} cross or touch each other.`,
      'Put the corners in order round the outline; a slot joined to the outside belongs to the outer ring.',
    ),
  holeOutside: (ring: string): Problem =>
    argumentProblem(
      'frame/section-hole-outside',
      ring,
      `The hole ${ring} does not lie wholly inside the outline, or it touches it.`,
      'A chamber that is open to the outside belongs to the outer ring.',
    ),
  holesTouch: (first: string, second: string): Problem =>
    argumentProblem(
      'frame/section-holes-touch',
      second,
      `The holes ${first} and ${second} overlap or touch.`,
      'Join them to one hole, or leave a wall between them.',
    ),
  torsionNeedsElements: (): Problem =>
    argumentProblem(
      'frame/torsion-no-closed-form',
      'outline',
      'The torsion constant of this outline has no closed form here: it needs finite elements.',
      'Use a rectangle, an equilateral triangle, an ellipse, a hollow section or thin walls; or enter tested data.',
    ),
  wallTooThick: (thickness: number, room: number): Problem =>
    argumentProblem(
      'frame/wall-too-thick',
      'thickness',
      `A wall of ${thickness} m does not fit: two walls must stay below ${room} m.`,
      'Check the wall thickness and its unit.',
    ),
  cornerRadius: (outer: number, inner: number): Problem =>
    argumentProblem(
      'frame/corner-radius',
      'outerRadius',
      `The corner radii ${outer} m outside and ${inner} m inside do not fit the section.`,
      'The outer radius is at least the inner one and at most half of the shorter side; the inner one fits the hole.',
    ),
  hollowRatio: (value: number): Problem =>
    argumentProblem(
      'frame/hollow-ratio',
      'innerOverOuter',
      `The inner size is ${value} times the outer one; it must be from 0 to below 1.`,
      'Give 0 for a solid section.',
    ),
  loadPlace: (index: number, at: number, span: number): Problem =>
    argumentProblem(
      'frame/load-off-span',
      'points',
      `Point load ${index + 1} stands at ${at} m, outside of the span of ${span} m.`,
      'Give its distance from the first end, between 0 and the span.',
    ),
  placeOffSpan: (x: number, span: number): Problem =>
    argumentProblem(
      'frame/place-off-span',
      'x',
      `The place ${x} m lies outside of the span of ${span} m.`,
      'Give a distance from the first end, between 0 and the span.',
    ),
  tooFewFeet: (count: number): Problem =>
    argumentProblem(
      'frame/too-few-feet',
      'feet',
      `${count} feet do not hold a frame upright; three are the least.`,
      'Give the plan points of at least three feet.',
    ),
  feetInLine: (): Problem =>
    argumentProblem(
      'frame/feet-in-line',
      'feet',
      'All feet stand in one line: the frame has no base to stand on.',
      'Give feet that span an area.',
    ),
  tiltRange: (tilt: number): Problem =>
    argumentProblem(
      'frame/tilt-range',
      'tilt',
      `A tilt of ${tilt} rad is outside 0 to a quarter turn.`,
      'Give the tilt of the floor or test, like 10 deg.',
    ),
  grooveClearance: (depth: number, clearance: number): Problem =>
    argumentProblem(
      'frame/groove-clearance',
      'endClearance',
      `An end clearance of ${clearance} m leaves no hold in a groove ${depth} m deep.`,
      'The clearance must stay below the depth of the groove.',
    ),
  noTolerances: (): Problem =>
    argumentProblem('frame/no-tolerances', 'tolerances', 'There is no tolerance to add up.', 'Give at least one.'),
} as const;
