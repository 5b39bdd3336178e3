import { describe, expect, it } from 'vitest';
import { weighOutOf } from '../../shared/floor/weigh-out.ts';
import { readCsv } from '../domain/support/read-csv.ts';
import { freshId } from './support/live-client.ts';
import { openTestHouse } from './support/test-house.ts';

describe('GET /api/weigh-out/:id', () => {
  it('Q17 is the weigh-out as comma-separated values, a row for each line, with what was weighed and its lots', async () => {
    const { house, workpiece } = await openTestHouse();
    const dough = workpiece('C1');
    const line = weighOutOf(house.floor.state, dough)?.parts.at(-1)?.lines[0];
    const grams = (line?.grams ?? 0) - 5;
    const command = { type: 'weighIngredient', workpieceId: dough.id, lineId: line?.id, grams, lotNumbers: ['=1+1', 'W 7'] };
    const given = await house.app.inject({ method: 'POST', url: '/api/commands', payload: { commandId: freshId(), command } });
    expect(given.statusCode).toBe(200);
    const answer = await house.app.inject(`/api/weigh-out/${dough.id}`);
    expect(answer.statusCode).toBe(200);
    expect(answer.headers['content-type']).toBe('text/csv; charset=utf-8');
    expect(answer.headers['content-disposition']).toBe(`attachment; filename="weigh-out-C1-${dough.serviceDate}.csv"`);
    const [columns, ...rows] = readCsv(answer.body);
    expect(columns).toEqual([
      'tag',
      'service_date',
      'formula',
      'formula_version',
      'part',
      'line',
      'kind',
      'item',
      'needed_g',
      'division_g',
      'held_back_g',
      'goes_in_at_step',
      'weighed_g',
      'lot_numbers',
      'weighed_at_utc',
    ]);
    const formula = house.floor.state.formulas['country@1'];
    expect(rows).toHaveLength(formula?.parts.reduce((sum, part) => sum + part.items.length, 0) ?? 0);
    for (const row of rows) expect(row.slice(0, 4)).toEqual(['C1', dough.serviceDate, 'country', '1']);
    const weighed = rows.find((row) => row[5] === line?.id);
    expect(weighed?.[12]).toBe(String(grams));
    expect(weighed?.[13]).toBe("'=1+1 W 7");
    expect(new Date(weighed?.[14] ?? '').getTime()).toBe(house.floor.state.workpieces[dough.id]?.weighed[line?.id ?? '']?.atMs);
    // What is weighed adds up to the dough, within the scale's divisions.
    const doughG = rows.filter((row) => row[4] === formula?.parts.at(-1)?.name).reduce((sum, row) => sum + Number(row[8]), 0);
    expect(Math.abs(doughG - dough.grams)).toBeLessThanOrEqual(5);
  });

  it('Q17 is 404 for what is not on the floor, 400 for what is no id', async () => {
    const { house } = await openTestHouse();
    const missing = await house.app.inject(`/api/weigh-out/${freshId()}`);
    expect([missing.statusCode, missing.json<{ type: string }>().type]).toEqual([404, 'urn:ovenward:problem:notFound']);
    const wrong = await house.app.inject('/api/weigh-out/C1');
    expect([wrong.statusCode, wrong.json<{ type: string }>().type]).toEqual([400, 'urn:ovenward:problem:badInput']);
  });
});
