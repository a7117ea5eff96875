/** Statements in every format, made from the same lines: for tests. */
export interface SampleLine {
  readonly date: string;
  readonly cents: number;
  readonly text: string;
}

export const sampleLines: readonly SampleLine[] = [
  { date: '2027-02-15', cents: 20_100, text: 'DEPOSIT D-1' },
  { date: '2027-02-15', cents: 8050, text: 'CARD PAYOUT' },
  { date: '2027-03-04', cents: -9000, text: 'RETURNED CHEQUE' },
  { date: '2027-03-05', cents: -120_000, text: 'LARKMEAD GROWERS' },
];

export const sampleClosing = -100_850;

/** `-1,234.50` with the marks given. */
export function written(cents: number, decimal = '.', group = ''): string {
  const digits = String(Math.abs(cents)).padStart(3, '0');
  const whole = digits.slice(0, -2).replace(/\B(?=(\d{3})+$)/g, group);
  return `${cents < 0 ? '-' : ''}${whole}${decimal}${digits.slice(-2)}`;
}

export function ofxSample(version: 1 | 2, currency = 'USD'): string {
  const tag = (name: string, text: string) =>
    version === 1 ? `<${name}>${text}\n` : `<${name}>${text}</${name}>\n`;
  const lines = sampleLines.map(
    ({ date, cents, text }, at) =>
      `<STMTTRN>${tag('TRNTYPE', cents < 0 ? 'DEBIT' : 'CREDIT')}` +
      tag('DTPOSTED', `${date.replaceAll('-', '')}120000[-5:EST]`) +
      `${tag('TRNAMT', written(cents))}${tag('FITID', `F${at}`)}${tag('NAME', text)}</STMTTRN>\n`,
  );
  const head =
    version === 1
      ? 'OFXHEADER:100\nDATA:OFXSGML\nVERSION:102\nENCODING:USASCII\nCHARSET:1252\n\n'
      : '<?xml version="1.0"?>\n<?OFX OFXHEADER="200" VERSION="203"?>\n';
  return (
    `${head}<OFX>\n<BANKMSGSRSV1><STMTTRNRS>${tag('TRNUID', '1')}<STMTRS>` +
    `${tag('CURDEF', currency)}<BANKACCTFROM>${tag('BANKID', '121099999')}` +
    `${tag('ACCTID', '999988')}</BANKACCTFROM><BANKTRANLIST>${lines.join('')}</BANKTRANLIST>` +
    `<LEDGERBAL>${tag('BALAMT', written(sampleClosing))}${tag('DTASOF', '20270405')}` +
    '</LEDGERBAL></STMTRS></STMTTRNRS></BANKMSGSRSV1></OFX>\n'
  );
}

export function camtSample(currency = 'USD'): string {
  const amount = (cents: number) =>
    `<Amt Ccy="${currency}">${written(Math.abs(cents))}</Amt>` +
    `<CdtDbtInd>${cents < 0 ? 'DBIT' : 'CRDT'}</CdtDbtInd>`;
  const balance = (code: string, cents: number) =>
    `<Bal><Tp><CdOrPrtry><Cd>${code}</Cd></CdOrPrtry></Tp>${amount(cents)}</Bal>`;
  const entries = sampleLines.map(
    ({ date, cents, text }, at) =>
      `<Ntry>${amount(cents)}<Sts>BOOK</Sts><BookgDt><Dt>${date}</Dt></BookgDt>` +
      `<AcctSvcrRef>F${at}</AcctSvcrRef><NtryDtls><TxDtls><RmtInf><Ustrd>${text}</Ustrd>` +
      '</RmtInf></TxDtls></NtryDtls></Ntry>',
  );
  return (
    '<?xml version="1.0" encoding="UTF-8"?>' +
    '<Document xmlns="urn:iso:std:iso:20022:tech:xsd:camt.053.001.08"><BkToCstmrStmt><Stmt>' +
    `<Acct><Id><Othr><Id>999988</Id></Othr></Id></Acct>${balance('OPBD', 0)}` +
    `${balance('CLBD', sampleClosing)}${entries.join('')}</Stmt></BkToCstmrStmt></Document>`
  );
}
