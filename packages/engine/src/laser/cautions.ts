/** Cautions that stand with every laser result. Source: handbook practice of laser safety; no figure in them is a limit. */
export const laserCautions: readonly string[] = [
  'An aid for planning: the appointed laser safety officer decides; national law and the standards in force hold.',
  'Values marked "from memory" must be compared with the standard before anyone relies on them.',
  'Data-sheet diameters, divergences and energies are typical values: use the largest, and count faults, pump and harmonic light.',
  'A limit is no line between safe and harmful: stay well below.',
];
export const barrierCautions: readonly string[] = [
  ...laserCautions,
  'A barrier is second to enclosing the beam. Cloth that holds light can still burn: keep it off focus points and away from heat.',
  'A rating holds only for the band, time, spot and pulse regime of its test.',
];
