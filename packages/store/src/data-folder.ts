import { posix, win32 } from 'node:path';

export interface Machine {
  readonly platform: NodeJS.Platform;
  readonly home: string;
  readonly env: Readonly<Record<string, string | undefined>>;
}

/**
 * Where a person's projects lie unless another folder is named.
 * Source: XDG Base Directory Specification 0.8 (`XDG_DATA_HOME`, absolute or ignored; from memory); the folders for application data that
 * macOS and Windows (`LOCALAPPDATA`) provide (common practice).
 */
export function defaultDataFolder({ platform, home, env }: Machine): string {
  if (platform === 'win32') return win32.join(env['LOCALAPPDATA'] || win32.join(home, 'AppData', 'Local'), 'Cloche');
  if (platform === 'darwin') return posix.join(home, 'Library', 'Application Support', 'Cloche');
  const named = env['XDG_DATA_HOME'];
  return posix.join(named && posix.isAbsolute(named) ? named : posix.join(home, '.local', 'share'), 'cloche');
}
