/** One key for each overlay, by what people think of it. */
const keys: Readonly<Record<string, string>> = {
  'laser/reach': 'Shift+R',
  'laser/scatter': 'Shift+S',
  'laser/barriers': 'Shift+B',
  'air/supply': 'Shift+A',
  'frame/loads': 'Shift+L',
  'curtain/supports': 'Shift+T',
  'room/ways': 'Shift+W',
  'room/keep-clear': 'Shift+K',
  'room/heights': 'Shift+H',
};

export const keyOfOverlay = (id: string): string | undefined => keys[id];
export const overlayIds = Object.keys(keys);
