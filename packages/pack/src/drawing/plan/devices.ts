import type { Catalogue, Design, DesignDevice } from '@cloche/engine';
import { ink, symbol } from '../inks.js';
import { box, circle, line, text } from '../marks.js';
import type { Mark, PaperPoint } from '../types.js';
import type { PlanView } from './view.js';

/** Letter of a device in its square or circle, and what it stands for. */
export interface DeviceSymbol {
  readonly letter: string;
  readonly meaning: string;
  readonly round: boolean;
}

const roleLetters: Readonly<Record<string, DeviceSymbol>> = {
  'door contact': { letter: 'D', meaning: 'door contact', round: false },
  'curtain contact': { letter: 'C', meaning: 'curtain contact', round: false },
  'stop button': { letter: 'E', meaning: 'emergency stop', round: false },
  controller: { letter: 'K', meaning: 'interlock controller', round: false },
  'key pad': { letter: 'O', meaning: 'entry override', round: false },
  'exit button': { letter: 'X', meaning: 'exit button', round: false },
  shutter: { letter: 'S', meaning: 'shutter', round: false },
  lamp: { letter: 'L', meaning: 'warning lamp', round: false },
  buzzer: { letter: 'B', meaning: 'buzzer', round: false },
};
const kindLetters: Readonly<Record<DesignDevice['kind'], DeviceSymbol>> = {
  sign: { letter: 'L', meaning: 'laser sign', round: false },
  stop: { letter: 'E', meaning: 'emergency stop', round: false },
  interlock: { letter: 'I', meaning: 'interlock part', round: false },
  sensor: { letter: 'P', meaning: 'measuring point', round: true },
};

/** Letters in the manner of the handbook of deliverables 1.12 (common practice). */
export function deviceSymbol(device: DesignDevice, catalogue: Catalogue): DeviceSymbol {
  const item = catalogue.byId.get(device.item);
  const byRole = item?.kind === 'interlock part' ? roleLetters[item.role] : undefined;
  return byRole ?? kindLetters[device.kind];
}

export function symbolMarks(at: PaperPoint, device: DeviceSymbol): Mark[] {
  const [x, y] = at;
  const letter = text([x, y + 1.25], device.letter, 2.5, { anchor: 'middle', medium: true });
  const outline = device.round
    ? circle(at, 2.4, symbol, '#FFFFFF')
    : box(x - 2.2, y - 2.2, 4.4, 4.4, symbol, '#FFFFFF');
  return [outline, letter];
}

/** Symbols of devices that stand close together are moved apart along the sheet, with a leader to their place. */
export function deviceMarks(design: Design, catalogue: Catalogue, view: PlanView): Mark[] {
  return devicePlaces(design, view).flatMap(({ device, place, at }) => {
    const leader = at === place ? [] : [line(place, at, { width: 0.25, colour: ink })];
    return [...leader, ...symbolMarks(at, deviceSymbol(device, catalogue))];
  });
}

/** Where each device is, and where its symbol stands on paper. */
export function devicePlaces(design: Design, view: PlanView) {
  const taken: PaperPoint[] = [];
  return design.devices.map((device) => {
    const place = view.to([device.at[0], device.at[1]]);
    let at: PaperPoint = place;
    while (taken.some((t) => Math.abs(t[0] - at[0]) < 5.4 && Math.abs(t[1] - at[1]) < 5.4)) at = [at[0] + 5.6, at[1]];
    taken.push(at);
    return { device, place, at };
  });
}
