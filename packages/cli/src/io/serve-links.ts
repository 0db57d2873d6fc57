import { networkInterfaces } from 'node:os';

/** Addresses under which other machines may find this one: the host itself, or all of this machine where it stands for all. */
export function hostsOf(host: string, interfaces = networkInterfaces()): readonly string[] {
  if (host !== '0.0.0.0' && host !== '::') return [host];
  const found = Object.values(interfaces)
    .flatMap((addresses) => addresses ?? [])
    .filter((a) => !a.internal && (host === '::' || a.family === 'IPv4') && !a.address.startsWith('fe80:'))
    .map((a) => a.address);
  return found.length > 0 ? found : ['localhost'];
}

/** A link that lets a browser in. */
export const linkOf = (host: string, port: string, token: string): string =>
  `http://${host.includes(':') ? `[${host}]` : host}:${port}/?token=${token}`;
