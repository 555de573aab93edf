import { expect, test } from 'vitest';
import { allowedHosts, shownHost } from './hosts.ts';

test('on the loopback address only its own names are let in', () => {
  expect(allowedHosts('127.0.0.1', 8200)).toEqual(['127.0.0.1:8200', 'localhost:8200', '[::1]:8200']);
});

test('an address for a tablet at the bench is let in beside them', () => {
  expect(allowedHosts('192.0.2.7', 8200)).toContain('192.0.2.7:8200');
});

// RFC 9110, 7.2 with RFC 3986, 6.2.3: the default port is left out of Host.
test('at the port a browser leaves out, the bare name is let in as well', () => {
  expect(allowedHosts('127.0.0.1', 80)).toContain('127.0.0.1');
});

// RFC 3986, 3.2.2: an IPv6 address stands in brackets.
test('an IPv6 address is written in brackets', () => {
  expect(allowedHosts('2001:db8::7', 8200)).toContain('[2001:db8::7]:8200');
  expect(shownHost('2001:db8::7')).toBe('[2001:db8::7]');
});

test('when listening everywhere the shown address is one that can be asked', () => {
  expect(shownHost('0.0.0.0')).not.toBe('0.0.0.0');
  expect(allowedHosts('0.0.0.0', 8200)).toContain(`${shownHost('0.0.0.0')}:8200`);
});
