import { expect, test } from 'vitest';
import { linkBaseOf } from '../../../src/app/link/link-base.ts';

test.each([
  ['https://trail.example/', 'https://trail.example/'],
  ['https://trail.example/app/index.html?a=1#course=1.x', 'https://trail.example/app/index.html'],
  ['http://192.168.1.20:4173/', 'http://192.168.1.20:4173/'],
])('links begin with the address of the page: %s', (address, base) => {
  expect(linkBaseOf(new URL(address))).toBe(base);
});

test.each([
  'http://localhost:4173/',
  'http://127.0.0.1/',
  'http://[::1]:80/',
  'http://app.localhost/',
  'file:///home/a.html',
])('there are none where nobody else could open them: %s', (address) => {
  expect(linkBaseOf(new URL(address))).toBeUndefined();
});

test('there are none without a page', () => {
  expect(linkBaseOf(undefined)).toBeUndefined();
});
