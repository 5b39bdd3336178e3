import { z } from 'zod';

// The pages' content security policy allows no code made from text. Zod tries whether it may as soon as a schema is made,
// and the browser reports the try; so this module comes before every other that makes one.
z.config({ jitless: true });
