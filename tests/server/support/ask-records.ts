import { ANSWERS } from '../../../server/records/questions-answered.ts';
import { RecordsBuilder } from '../../../server/records/records-builder.ts';
import { RecordsReader } from '../../../server/records/records-reader.ts';
import { QUESTIONS, type QuestionName } from '../../../shared/records/questions.ts';

/** The answer to a question of the records of a data folder, made of its journal here and now. */
export async function askRecords(folder: string, name: QuestionName, asked: object): Promise<unknown> {
  const builder = await RecordsBuilder.open(folder);
  await builder?.catchUp();
  await builder?.close();
  const reader = await RecordsReader.open(folder);
  try {
    return await ANSWERS[name](reader, QUESTIONS[name].parse(asked) as never);
  } finally {
    await reader.close();
  }
}
