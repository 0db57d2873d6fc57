import { lengthText, type Units } from '../../drawing/length-text.js';
import { arrangeTexts as say } from '../../texts/arrange.js';
import type { Measured } from './measured.js';

/** Square feet in a square metre. */
const squareFoot = 0.3048 ** 2;

export const areaText = (area: number, units: Units): string =>
  units === 'imperial' ? `${(area / squareFoot).toFixed(1)} ft²` : `${area.toFixed(3)} m²`;

export const angleText = (angle: number): string => `${Number(((angle * 180) / Math.PI).toFixed(2))}°`;

/** All that was measured in one line, to be read out or copied. */
export function measureText({ length, east, north, angle, total, area }: Measured, units: Units): string {
  const text = (metres: number) => lengthText(metres, units);
  return [
    `${say.measure.length} ${text(length)}`,
    `${say.measure.east} ${text(east)}`,
    `${say.measure.north} ${text(north)}`,
    `${say.measure.angle} ${angleText(angle)}`,
    `${say.measure.total} ${text(total)}`,
    ...(area === null ? [] : [`${say.measure.area} ${areaText(area, units)}`]),
  ].join(', ');
}
