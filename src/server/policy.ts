import type { Context, MiddlewareHandler } from 'hono';
import { getCookie, setCookie } from 'hono/cookie';
import { type Fault, refuse, sayFault } from '../fault/fault.ts';
import { sameToken, tokenCookie } from './token.ts';

/** Who may ask: the hosts a request may name, and the secret of this session. */
export interface Access {
  readonly hosts: readonly string[];
  readonly token: string;
  readonly port: number;
}

const CONTENT_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "connect-src 'self'",
  "img-src 'self' data:",
  "worker-src 'self'",
  "frame-ancestors 'none'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

/** Puts on every answer what the page may do and what others may do with it. */
export const contentPolicy: MiddlewareHandler = async (context, next) => {
  await next();
  const { headers } = context.res;
  headers.set('content-security-policy', CONTENT_POLICY);
  headers.set('x-content-type-options', 'nosniff');
  headers.set('referrer-policy', 'no-referrer');
  headers.set('cross-origin-opener-policy', 'same-origin');
  headers.set('cross-origin-resource-policy', 'same-origin');
  headers.set('cache-control', 'no-store');
};

/**
 * Lets in only requests to this server's own address, from its own page, with the session's token.
 * The first request carries the token in the address; it is moved into a cookie that scripts and other sites can't use,
 * and the browser goes on to the address without it, so that the token stays out of the history and of screenshots.
 */
export function guard({ hosts, token, port }: Access): MiddlewareHandler {
  return async (context, next) => {
    const host = context.req.header('host')?.toLowerCase() ?? '';
    if (!hosts.includes(host)) return answerFault(context, 403, refuse('server/wrong-host', { host, hosts }));

    const origin = context.req.header('origin');
    if (origin !== undefined && origin !== `http://${host}`)
      return answerFault(context, 403, refuse('server/wrong-origin', { origin }));

    const { method } = context.req;
    const posts = method === 'POST' && origin !== undefined;
    // A change is asked for by the page itself, and browsers say so; a POST without an origin comes from elsewhere.
    if (method !== 'GET' && method !== 'HEAD' && !posts)
      return answerFault(context, 405, refuse('server/wrong-method', { method }));

    const url = new URL(context.req.url);
    if (url.pathname === '/' && sameToken(url.searchParams.get('token') ?? undefined, token)) {
      setCookie(context, tokenCookie(port), token, { httpOnly: true, sameSite: 'Strict', path: '/' });
      return context.redirect('/', 303);
    }
    if (!sameToken(getCookie(context, tokenCookie(port)), token))
      return answerFault(context, 401, refuse('server/no-token'));
    await next();
  };
}

/** A fault as the answer: JSON for the page's own requests, plain text where a person looks at it. */
export function answerFault(
  context: Context,
  status: 400 | 401 | 403 | 404 | 405 | 409 | 422 | 500,
  fault: Fault,
): Response {
  const { found, expected, remedy } = sayFault(fault);
  if (context.req.path.startsWith('/api/'))
    return context.json({ error: { code: fault.code, found, expected, remedy } }, status);
  const text = [found, expected && `expected: ${expected}`, remedy && `do: ${remedy}`].filter(Boolean).join('\n');
  return context.text(`${text}\n`, status);
}
