import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';

/** A session's secret: 256 random bits, safe in a URL and in a cookie. */
export function makeToken(): string {
  return randomBytes(32).toString('base64url');
}

/** Whether two tokens are the same, in a time that tells nothing about where they differ. */
export function sameToken(given: string | undefined, wanted: string): boolean {
  return given !== undefined && timingSafeEqual(digest(given), digest(wanted));
}

/** Browsers share cookies between the ports of a host: the name keeps two servers on one machine apart. */
export function tokenCookie(port: number): string {
  return `uprate-${port}`;
}

function digest(text: string): Buffer {
  return createHash('sha256').update(text).digest();
}
