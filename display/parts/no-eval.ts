import { z } from 'zod';

// The pages' content security policy allows no code made from text. zod would try when the first schema is made, and the
// browser would report it; so every page's main module imports this one before any that makes a schema.
z.config({ jitless: true });
