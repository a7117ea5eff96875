import { describe, expect, it } from 'vitest';
import { readBankFile } from '../../src/intake/bank/read-bank-file.ts';

/**
 * Statements with published figures. OFX: the statement responses of the specifications 1.6.0 and
 * 2.0.1, as stored in the samples of github libofx/libofx (the year is 1996 in the first and 1999
 * in the second); its BANKID, 121099999, fails the check digit of American routing numbers (weights
 * 3, 7, 1), so no file may be refused for that. camt.053: the two statements of a test file of
 * github genkgo/camt (MIT), since an official sample was not found. The figures are theirs, the
 * files are written anew.
 */
function ofx(version: 1 | 2, year: number): string {
  const end = (name: string) => (version === 1 ? '' : `</${name}>`);
  const tag = (name: string, text: string) => `<${name}>${text}${end(name)}\n`;
  const check =
    `<STMTTRN>${tag('TRNTYPE', 'CHECK')}${tag('DTPOSTED', `${year}1004`)}` +
    `${tag('TRNAMT', '-200.00')}${tag('FITID', '00002')}${tag('CHECKNUM', '1000')}</STMTTRN>`;
  const atm =
    `<STMTTRN>${tag('TRNTYPE', 'ATM')}${tag('DTPOSTED', `${year}1020`)}` +
    `${tag('DTUSER', `${year}1020`)}${tag('TRNAMT', '-300.00')}${tag('FITID', '00003')}</STMTTRN>`;
  const head =
    version === 1
      ? 'OFXHEADER:100\nDATA:OFXSGML\nVERSION:160\nSECURITY:NONE\nENCODING:USASCII\n\n'
      : '<?xml version="1.0"?><?OFX OFXHEADER="200" VERSION="200" SECURITY="NONE"?>\n';
  return (
    `${head}<OFX><BANKMSGSRSV1><STMTTRNRS>${tag('TRNUID', '1001')}` +
    `<STATUS>${tag('CODE', '0')}${tag('SEVERITY', 'INFO')}</STATUS><STMTRS>` +
    `${tag('CURDEF', 'USD')}<BANKACCTFROM>${tag('BANKID', '121099999')}` +
    `${tag('ACCTID', '999988')}${tag('ACCTTYPE', 'CHECKING')}</BANKACCTFROM><BANKTRANLIST>` +
    `${tag('DTSTART', `${year}1001`)}${tag('DTEND', `${year}1028`)}${check}${atm}</BANKTRANLIST>` +
    `<LEDGERBAL>${tag('BALAMT', '200.29')}${tag('DTASOF', `${year}10291120`)}</LEDGERBAL>` +
    `<AVAILBAL>${tag('BALAMT', '200.29')}${tag('DTASOF', `${year}10291120`)}</AVAILBAL>` +
    '</STMTRS></STMTTRNRS></BANKMSGSRSV1></OFX>\n'
  );
}

describe('the statement of the OFX specification', () => {
  it.each([
    [1, 1996],
    [2, 1999],
  ] as const)('version %i', (version, year) => {
    expect(readBankFile(ofx(version, year), 'USD')).toMatchObject({
      ok: true,
      value: {
        closing: 20_029,
        account: '999988',
        lines: [
          { line: 1, date: `${year}-10-04`, cents: -20_000, reference: '00002', text: '1000' },
          { line: 2, date: `${year}-10-20`, cents: -30_000, reference: '00003' },
        ],
      },
    });
  });
});

function camtStatement(opening: string, entry: string, way: string, closing: string): string {
  const balance = (code: string, amount: string) =>
    `<Bal><Tp><CdOrPrtry><Cd>${code}</Cd></CdOrPrtry></Tp><Amt Ccy="EUR">${amount}</Amt>` +
    '<CdtDbtInd>CRDT</CdtDbtInd></Bal>';
  return (
    `<Stmt><Acct><Id><IBAN>NL26VAYB8060476890</IBAN></Id></Acct>${balance('OPBD', opening)}` +
    `${balance('CLBD', closing)}<Ntry><Amt Ccy="EUR">${entry}</Amt><CdtDbtInd>${way}</CdtDbtInd>` +
    '<Sts>BOOK</Sts><BookgDt><Dt>2014-12-31</Dt></BookgDt></Ntry></Stmt>'
  );
}

describe('the two statements of camt.053', () => {
  const text =
    '<?xml version="1.0" encoding="UTF-8"?>' +
    '<Document xmlns="urn:iso:std:iso:20022:tech:xsd:camt.053.001.02"><BkToCstmrStmt>' +
    camtStatement('18.15', '8.85', 'CRDT', '27.00') +
    camtStatement('27.00', '7.00', 'DBIT', '20.00') +
    '</BkToCstmrStmt></Document>';

  it('open at 18.15, take in 8.85, give out 7.00 and close at 20.00', () => {
    const read = readBankFile(text, 'EUR');
    expect(read).toMatchObject({
      value: { opening: 1815, closing: 2000, lines: [{ cents: 885 }, { cents: -700 }] },
    });
    if (!read.ok) return;
    const { opening = 0, closing, lines } = read.value;
    expect(lines.reduce((sum, { cents }) => sum + cents, opening)).toBe(closing);
  });
});
