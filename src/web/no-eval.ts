import { config } from 'zod';

// The content policy forbids making code from text. Without this the schemas would try it first, and each try is reported as a violation.
// Imported before anything that makes a schema.
config({ jitless: true });
