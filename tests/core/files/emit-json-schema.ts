/** Writes assets/schema anew: `node --import tsx tests/core/files/emit-json-schema.ts`. */
import { writeFileSync } from 'node:fs';
import { courseJsonSchema } from '../../../src/core/files/json-schema.ts';
import { scoreCardJsonSchema } from '../../../src/core/score/score-card.ts';
import { setOutJsonSchema } from '../../../src/core/setout/setout-document.ts';

writeFileSync('assets/schema/course.schema.json', courseJsonSchema());
writeFileSync('assets/schema/setout.schema.json', setOutJsonSchema());
writeFileSync('assets/schema/score-card.schema.json', scoreCardJsonSchema());
