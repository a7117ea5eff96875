import { say } from '../../say.ts';
import '../../styles/tasks.css';
import {
  type HostProduct,
  type HostReport,
  type HostStall,
  hostReport,
} from '../../../questions/host-report.ts';
import { hostName, productName } from '../../../statements/account-name.ts';
import { hoursText } from '../../../statements/hours-text.ts';
import { stallTimeText } from '../../../statements/stall-time-text.ts';
import { useBook } from '../../book.ts';
import { Money } from '../../parts/figures.tsx';
import { Page } from '../../parts/page.tsx';
import { PaperLinks } from '../../parts/paper-links.tsx';
import { type Column, Table } from '../../parts/table.tsx';
import type { ScreenProps } from '../../routes.ts';

const ABOVE = <a href="/set-up/hosts">{say`Host shops`}</a>;

const STALLS: readonly Column<HostStall>[] = [
  { head: say`Stall`, cell: (row) => stallTimeText(row.starts, row.ends, say) },
  { head: say`Open`, number: true, cell: (row) => hoursText(row.minutes, say) },
  {
    head: say`Units`,
    number: true,
    cell: (row) => (row.settled ? say.units(row.units) : say`not counted`),
  },
  {
    head: say`Value`,
    number: true,
    cell: (row) => (row.settled ? <Money minor={row.value} plain /> : ''),
  },
];

/** One host shop's season, for the shop itself: no seller and no family is named. */
export function HostReportScreen({ params }: ScreenProps) {
  const { ledger } = useBook();
  const report = hostReport(ledger, params.host ?? '');
  if (report === undefined) {
    return (
      <Page title={say`Host shop`} above={ABOVE}>
        <p>{say`There is no such host shop in this book.`}</p>
      </Page>
    );
  }
  return <Report report={report} />;
}

function Report({ report }: { readonly report: HostReport }) {
  const { ledger } = useBook();
  const products: readonly Column<HostProduct>[] = [
    { head: say`Product`, cell: (row) => productName(ledger.setup, row.product) },
    { head: say`Units`, number: true, cell: (row) => say.units(row.units) },
    { head: say`Value`, number: true, cell: (row) => <Money minor={row.value} plain /> },
  ];
  const settled = report.stalls.filter((stall) => stall.settled).length;
  const value = <Money key="value" minor={report.value} plain />;
  return (
    <Page
      title={hostName(ledger.setup, report.host)}
      above={ABOVE}
      lead={
        <>
          {say.count(settled)`# stall|# stalls`}, {hoursText(report.minutes, say)},{' '}
          {say.count(report.units)`# unit|# units`}, {value}.
        </>
      }
      actions={<PaperLinks paper="host-report" about={report.host} words={say`Report`} print />}
    >
      <Table
        caption={say`Stalls at this shop`}
        rows={report.stalls}
        keyOf={(row) => row.stall}
        columns={STALLS}
        none={say`No stall here yet.`}
      />
      <Table
        caption={say`Sold, by product`}
        rows={report.products}
        keyOf={(row) => row.product}
        columns={products}
        none={say`Nothing is counted yet.`}
        foot={[say`Together`, say.units(report.units), value]}
      />
    </Page>
  );
}
