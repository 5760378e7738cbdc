import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { courseJsonSchema } from '../../../src/core/files/json-schema.ts';

const SCHEMA = readFileSync('assets/schema/course.schema.json', 'utf8');

test('the schema in assets is up to date (node --import tsx tests/core/files/emit-json-schema.ts)', () => {
  expect(SCHEMA).toBe(courseJsonSchema());
});

describe('another program that knows only the schema', () => {
  const accepts = new Ajv2020({ strictTuples: false }).compile(JSON.parse(SCHEMA));
  const good = () => JSON.parse(readFileSync('seeds/old/version-1.course.json', 'utf8'));

  test('accepts a good file', () => {
    expect(accepts(good()), JSON.stringify(accepts.errors)).toBe(true);
  });

  test.each<[string, (file: ReturnType<typeof good>) => void, string]>([
    ['no arena', (file) => delete file.arena, 'required'],
    ['no layout', (file) => file.layouts.pop(), 'minItems'],
    ['a text for a place', (file) => Object.assign(file.layouts[0].ride.start, { x: 'west' }), 'type'],
    ['an unknown field', (file) => Object.assign(file, { colour: 'green' }), 'additionalProperties'],
    ['another version', (file) => Object.assign(file, { version: 2 }), 'const'],
  ])('refuses %s', (_, change, keyword) => {
    const file = good();
    change(file);
    expect(accepts(file)).toBe(false);
    expect(accepts.errors?.map((error) => error.keyword)).toContain(keyword);
  });
});
