import * as z from 'zod/mini';
import { VERSION } from '../course/course.ts';
import { courseSchema, SCHEMA_PARTS } from '../course/schema.ts';

/** The schema of a course file for other programs: JSON Schema, draft 2020-12. What it cannot say is asked in sense.ts. */
export function courseJsonSchema(): string {
  const names = z.registry<{ id: string }>();
  for (const [name, part] of Object.entries(SCHEMA_PARTS)) names.add(part, { id: name });
  const { $schema, ...rest } = z.toJSONSchema(courseSchema, { metadata: names });
  const title = `Polewright course, version ${VERSION}`;
  const description =
    'A trail course: arena, truck, layouts. Lengths in metres, angles in radians counter-clockwise from +x.';
  return `${JSON.stringify({ $schema, title, description, ...rest }, null, 2)}\n`;
}
