import { bookFormulaSchema } from '../../shared/book/book-api.ts';
import type { ClientCommand } from '../../shared/floor/commands.ts';
import type { Lesson } from '../../shared/records/lessons-answer.ts';
import { withTarget } from '../../shared/records/lesson-rules.ts';
import type { RecordsTools } from './records-tools.ts';

/** What became of the answer to a lesson. */
export type LessonOutcome =
  | { readonly what: 'used'; readonly version: number }
  | { readonly what: 'left' | 'refused' | 'changed' | 'notKept' };

/** Writes what was found into the document: its next version, with the step's minutes as proposed and nothing else changed. */
export async function takeOver(tools: RecordsTools, { subject, formula, step, proposal }: Lesson): Promise<LessonOutcome> {
  if (formula === null || step === null || proposal === null) return { what: 'changed' };
  const got = await tools.read(`/api/book/formulas/${formula}`);
  if (got?.status === 403) return { what: 'refused' };
  const book = bookFormulaSchema.safeParse(got?.body);
  if (got?.status !== 200 || !book.success) return { what: 'notKept' };
  const { fromMin, toMin } = proposal;
  if (subject.kind === 'formula') {
    const { formula: document, version } = book.data;
    if (document.method.find(({ id }) => id === step.id)?.minutes.target !== fromMin) return { what: 'changed' };
    const written = { ...document, method: withTarget(document.method, step.id, toMin) };
    return await given(tools, { type: 'adoptFormula', fromVersion: version, formula: written }, { what: 'used', version: version + 1 });
  }
  const known = book.data.products.find(({ product }) => product.id === subject.id);
  if (known?.product.way.find(({ id }) => id === step.id)?.minutes.target !== fromMin) return { what: 'changed' };
  const written = { ...known.product, way: withTarget(known.product.way, step.id, toMin) };
  return await given(
    tools,
    { type: 'adoptProduct', fromVersion: known.version, product: written },
    { what: 'used', version: known.version + 1 },
  );
}

/** Leaves the document as it is, so that this is not offered again until something else is found. */
export async function leave(tools: RecordsTools, { subject, step, proposal }: Lesson): Promise<LessonOutcome> {
  if (step === null || proposal === null || (subject.kind !== 'formula' && subject.kind !== 'product')) return { what: 'changed' };
  const { fromMin, toMin } = proposal;
  return await given(
    tools,
    { type: 'leaveLesson', subject: { kind: subject.kind, id: subject.id }, stepId: step.id, assumedMin: fromMin, foundMin: toMin },
    { what: 'left' },
  );
}

async function given(tools: RecordsTools, command: ClientCommand, done: LessonOutcome): Promise<LessonOutcome> {
  const answer = await tools.command(command);
  switch (answer?.status) {
    case 200:
      return done;
    case 403:
      return { what: 'refused' };
    case 409:
      return { what: 'changed' };
    default:
      return { what: 'notKept' };
  }
}
