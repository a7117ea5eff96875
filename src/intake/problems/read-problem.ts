import type { Static, TSchema } from 'typebox';
import { Compile } from 'typebox/compile';
import { done, type Outcome, refused } from '../../base/outcome.ts';
import { type Finding, saidOf } from '../finding.ts';
import { examineJsonText } from '../json-text.ts';
import { schemaFindings } from '../schema-findings.ts';

/**
 * Text with one JSON value to a problem for a solver, or the first thing that is wrong with it. A
 * problem is no record: it is answered and forgotten.
 */
export function readProblem<S extends TSchema>(
  schema: S,
  text: string,
): Outcome<Static<S>, Finding> {
  const place = { line: 1 };
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return refused(
      problemFinding('', text.trim() === '' ? 'nothing' : text.trim(), 'one JSON object'),
    );
  }
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    return refused(problemFinding('', saidOf(value), 'one JSON object'));
  }
  const { faults, written } = examineJsonText(text);
  const validator = Compile(schema);
  const form = { schema, validator, fields: new Map() };
  const [wrong] = schemaFindings(form, value, place, written);
  if (wrong !== undefined) return refused(wrong);
  const [fault] = faults.filter(({ wanted }) => wanted !== 'a whole number');
  if (fault !== undefined) return refused({ ...place, ...fault, severity: 'error' });
  if (!validator.Check(value)) return refused(problemFinding('', saidOf(value), 'a problem'));
  return done(value);
}

/** @param said what was there; @param wanted in words for a person */
export function problemFinding(field: string, said: unknown, wanted: string): Finding {
  return { line: 1, field, said: saidOf(said), wanted, severity: 'error' };
}
