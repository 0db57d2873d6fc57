/** A layer of the DXF file: colour index and line weight by layer, line type where it means something. */
export interface DxfLayerSpec {
  readonly name: string;
  readonly colour: number;
  /** Hundredths of a millimetre, one of the values that the format allows. */
  readonly weight: 13 | 18 | 25 | 35 | 50 | 70 | 100;
  readonly lineType: 'Continuous' | 'DASHED' | 'CHAIN' | 'PHANTOM';
}

const layer = (
  name: string,
  colour: number,
  weight: DxfLayerSpec['weight'],
  lineType: DxfLayerSpec['lineType'] = 'Continuous',
): DxfLayerSpec => ({
  name,
  colour,
  weight,
  lineType,
});

/** Names in the manner of the handbook of deliverables 3.2 (common practice); weights by ISO 128-2. Colour 7 is black or white. */
export const dxfLayers = {
  wall: layer('A-WALL-EXST', 7, 100),
  column: layer('A-COLS', 8, 50),
  beam: layer('A-BEAM', 8, 25, 'DASHED'),
  door: layer('A-DOOR', 7, 25),
  window: layer('A-GLAZ', 4, 25),
  furniture: layer('A-FURN', 8, 25, 'PHANTOM'),
  frame: layer('S-FRAM', 5, 50),
  support: layer('S-SUPT', 6, 35),
  unit: layer('M-FFU', 4, 25, 'DASHED'),
  air: layer('M-AIRS', 4, 25, 'DASHED'),
  fire: layer('F-PROT', 1, 25),
  curtain: layer('I-CURT', 3, 50),
  track: layer('I-TRAK', 3, 25),
  laser: layer('L-BEAM', 30, 35, 'CHAIN'),
  sign: layer('L-SIGN', 30, 35),
  interlock: layer('E-INLK', 1, 35),
  board: layer('E-POWR', 1, 35),
  table: layer('Q-OPTB', 8, 50),
  dimension: layer('G-DIMS', 7, 25),
  words: layer('G-ANNO', 7, 25),
} as const satisfies Readonly<Record<string, DxfLayerSpec>>;

export type LayerKey = keyof typeof dxfLayers;

/** Stroke and gap lengths on paper [mm]; multiplied by the scale in the file. Source: ISO 128-2 multiples at 0.25 mm (from memory). */
export const dxfLineTypes = {
  DASHED: [3, -0.75],
  CHAIN: [6, -0.75, 0.12, -0.75],
  PHANTOM: [6, -0.75, 0.12, -0.75, 0.12, -0.75],
} as const;
