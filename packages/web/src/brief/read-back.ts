import { type Dimension, dimensions, groupDigits, numberText, parseQuantity } from '@cloche/engine';

/** Units of the sheet, where they are not the SI unit: factor from SI. */
const sheetUnits: Partial<Record<Dimension, readonly [number, string]>> = {
  angle: [180 / Math.PI, 'deg'],
  flow: [3600, 'm³/h'],
  ratio: [100, '%'],
};

/**
 * How a typed quantity was understood, in the unit of the sheet; null when it was typed that way already, or cannot be read.
 * Lengths from a millimetre up stand in mm, smaller ones in µm or nm.
 */
export function readBack(text: string, dimension: Dimension): string | null {
  const read = parseQuantity(text, dimension);
  if (!read.ok) return null;
  const said = dimension === 'length' ? lengthText(read.value) : quantityText(read.value, dimension);
  return said.replace(/\s/g, '') === text.replace(/\s/g, '') ? null : said;
}

function lengthText(metres: number): string {
  const size = Math.abs(metres);
  if (size >= 0.1) return `${groupDigits(Math.round(metres * 1000))} mm`;
  if (size >= 1e-3 || size === 0) return `${numberText(metres * 1e3)} mm`;
  return size >= 2e-6 ? `${numberText(metres * 1e6)} µm` : `${numberText(metres * 1e9)} nm`;
}

function quantityText(si: number, dimension: Dimension): string {
  if (dimension === 'temperature') return `${numberText(si - 273.15)} °C`;
  const [factor, unit] = sheetUnits[dimension] ?? [1, dimensions[dimension].si];
  return `${numberText(si * factor)} ${unit}`;
}
