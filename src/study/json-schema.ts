import { z } from 'zod';
import { studySchema } from './schema/study.ts';

/** JSON Schema of the study file, for editors that complete and check while one types. */
export function jsonSchema(): object {
  return { ...z.toJSONSchema(studySchema, { io: 'input', reused: 'ref' }), title: 'Uprate study' };
}
