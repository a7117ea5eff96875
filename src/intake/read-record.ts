import { UUID7_PATTERN } from '../base/id.ts';
import { nearest } from '../base/nearest.ts';
import { allKinds, type BookRecord, isKind } from '../records/record.ts';
import { type Finding, saidOf } from './finding.ts';
import { examineJsonText, type JsonText, needsCloserLook } from './json-text.ts';
import { NOT_SURE, quickLength } from './quick-look.ts';
import { fitsSchema, formOf } from './record-form.ts';
import { type Place, schemaFindings } from './schema-findings.ts';
import { mayLackSense, senseFindings } from './sense.ts';
import { partFindings } from './unknown-parts.ts';

/**
 * One value to one record, or to findings that say what is wrong with it. The same for a line of a
 * file and for a request.
 */
export interface RecordRead {
  /** The record, as it came and with fields the schema does not know; undefined after an error. */
  readonly record: BookRecord | undefined;
  readonly findings: readonly Finding[];
}

const IS_ID = new RegExp(`^${UUID7_PATTERN}$`);
const NO_TEXT: JsonText = { faults: [], written: new Map() };
const NO_FINDINGS: readonly Finding[] = [];

/**
 * Reads one value. Never throws.
 * @param line where it stands, from 1: told in the findings
 * @param text the JSON text it was parsed from, where there is one, to find what parsing lost
 */
export function readRecord(value: unknown, line: number, text?: string): RecordRead {
  const record = cleanRecord(value, text);
  return record === undefined ? readClosely(value, line, text) : { record, findings: NO_FINDINGS };
}

/** The record where there is nothing to tell about it: the quick way, for most lines of a file. */
export function cleanRecord(value: unknown, text?: string): BookRecord | undefined {
  const length = quickLength(value);
  if (!isSure(value, length) || mayLackSense(value)) return undefined;
  if (text !== undefined && text.length !== length && needsCloserLook(text, value)) {
    return undefined;
  }
  return value;
}

function isSure(_value: unknown, length: number): _value is BookRecord {
  return length !== NOT_SURE;
}

function readClosely(value: unknown, line: number, text?: string): RecordRead {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    const wanted = 'one record, an object like {"id":…,"kind":…}';
    return failed([{ line, field: '', said: saidOf(value), wanted, severity: 'error' }]);
  }
  const place = placeOf(value, line);
  const kind: unknown = Reflect.get(value, 'kind');
  if (typeof kind !== 'string' || !isKind(kind)) {
    return failed([
      { ...place, field: 'kind', said: saidOf(kind), wanted: wantedKind(kind), severity: 'error' },
    ]);
  }
  const form = formOf(kind);
  const examined = text === undefined ? NO_TEXT : examineJsonText(text);
  const findings: Finding[] = [
    ...schemaFindings(form, value, place, examined.written),
    ...partFindings(value, form.fields, place),
  ];
  const errors = findings.filter((finding) => finding.severity === 'error');
  const told = new Set(errors.map((finding) => finding.field));
  for (const fault of examined.faults) {
    if (!told.has(fault.field)) findings.push({ ...place, ...fault, severity: 'error' });
  }
  if (!fitsSchema(value)) return failed(findings);
  findings.push(...senseFindings(value, place));
  return findings.some((finding) => finding.severity === 'error')
    ? failed(findings)
    : { record: value, findings };
}

function failed(findings: readonly Finding[]): RecordRead {
  return { record: undefined, findings };
}

function placeOf(value: object, line: number): Place {
  const id: unknown = Reflect.get(value, 'id');
  return typeof id === 'string' && IS_ID.test(id) ? { line, record: id } : { line };
}

function wantedKind(said: unknown): string {
  const near = typeof said === 'string' ? nearest(said, allKinds) : undefined;
  if (near !== undefined) return `a kind of record: ${near}, if that is meant`;
  return 'a kind of record, like handover, return, payment or stall-close';
}
