/** Writes assets/schema/course.schema.json anew: `node --import tsx tests/core/files/emit-json-schema.ts`. */
import { writeFileSync } from 'node:fs';
import { courseJsonSchema } from '../../../src/core/files/json-schema.ts';

writeFileSync('assets/schema/course.schema.json', courseJsonSchema());
