/** Height of a capital as a share of the em. Source: OS/2 table of the shipped font, sCapHeight/unitsPerEm = 689/1000. */
export const capRatio = 0.689;

/** Advance widths of U+0020 to U+007E in thousandths of the em. Source: hmtx table of the shipped font, regular weight. */
export const regularAdvance: readonly number[] = [
  265, 241, 399, 518, 531, 826, 729, 219, 324, 324, 439, 499, 240, 403, 240, 520, 558, 433, 495, 499, 532, 501, 533,
  444, 551, 525, 240, 240, 500, 500, 500, 459, 1020, 573, 608, 560, 644, 535, 491, 631, 680, 295, 305, 589, 498, 778,
  683, 692, 581, 691, 605, 545, 517, 662, 556, 826, 540, 550, 522, 322, 520, 322, 540, 520, 300, 544, 594, 478, 598,
  545, 335, 520, 586, 282, 280, 512, 293, 857, 586, 584, 594, 598, 386, 467, 361, 582, 492, 717, 485, 492, 437, 322,
  403, 322, 488,
];

/** The medium weight runs this much wider at most (`W` of both weights: 837/826; digits 573/558). */
export const mediumFactor = 1.03;

/** Every digit takes this width once tabular figures are switched on. */
export const tabularDigit = 560;
