/** One key for each overlay, by what people think of it. */
const keys: Readonly<Record<string, string>> = {
  'laser/reach': 'L',
  'laser/scatter': 'S',
  'laser/barriers': 'P',
  'air/supply': 'A',
  'frame/loads': 'F',
  'curtain/supports': 'U',
  'room/ways': 'G',
  'room/keep-clear': 'K',
  'room/heights': 'H',
};

export const keyOfOverlay = (id: string): string | undefined => keys[id];
export const overlayIds = Object.keys(keys);
