import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

const find = createRequire(import.meta.url);
const font = (path: string) => new Uint8Array(readFileSync(find.resolve(`@expo-google-fonts/fira-sans/${path}`)));

export const fonts = {
  regular: font('400Regular/FiraSans_400Regular.ttf'),
  medium: font('500Medium/FiraSans_500Medium.ttf'),
};
