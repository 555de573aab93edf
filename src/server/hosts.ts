import { networkInterfaces } from 'node:os';

const LOOPBACK = ['127.0.0.1', 'localhost', '[::1]'];
const EVERYWHERE = ['0.0.0.0', '::'];

/**
 * What a request's Host header may say, by the address that is listened at.
 * A name that someone else's name server points at this machine is never among them (DNS rebinding).
 */
export function allowedHosts(host: string, port: number): readonly string[] {
  const names = new Set(LOOPBACK);
  if (EVERYWHERE.includes(host)) for (const address of ownAddresses()) names.add(address);
  else names.add(bracketed(host.toLowerCase()));
  const withPort = [...names].map((name) => `${name}:${port}`);
  return port === 80 ? [...names, ...withPort] : withPort;
}

/** The host for the printed address: one that another machine can reach when everything is listened at. */
export function shownHost(host: string): string {
  if (!EVERYWHERE.includes(host)) return bracketed(host);
  return ownAddresses()[0] ?? '127.0.0.1';
}

function ownAddresses(): readonly string[] {
  return Object.values(networkInterfaces())
    .flatMap((addresses) => addresses ?? [])
    .filter(({ internal }) => !internal)
    .sort((a, b) => a.family.localeCompare(b.family))
    .map(({ address }) => bracketed(address));
}

function bracketed(host: string): string {
  return host.includes(':') && !host.startsWith('[') ? `[${host}]` : host;
}
