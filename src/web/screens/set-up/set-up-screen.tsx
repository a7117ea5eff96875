import '../../styles/tasks.css';
import { dayText } from '../../../statements/day-text.ts';
import { useBook } from '../../book.ts';
import { ClosedNotice } from '../../parts/closed-season.tsx';
import { Page } from '../../parts/page.tsx';

/** The way into everything that is set up once and then left alone. */
export function SetUpScreen() {
  const { ledger } = useBook();
  const { setup } = ledger;
  const { season } = setup;
  const active = [...setup.sellers.values()].filter((seller) => seller.active).length;
  const holds = [...setup.holds.values()].filter((hold) => hold.lifted !== true).length;
  const rows: readonly (readonly [to: string, words: string, facts: string])[] = [
    [
      '/set-up/season',
      'Season and deadlines',
      season === undefined
        ? 'not set up yet'
        : `${season.name}, ${season.currency}, ${dayText(season.starts)} to ` +
          `${dayText(season.ends)}, ${season.deadlines?.length ?? 0} deadlines`,
    ],
    [
      '/set-up/banking',
      'The bank’s days',
      season?.banking === undefined ? 'common practice' : 'as your bank has them',
    ],
    ['/set-up/paste', 'Paste a seller list', 'from a spreadsheet, with a preview'],
    ['/set-up/families', 'Families', `${setup.families.size}`],
    ['/set-up/sellers', 'Sellers', `${active} active of ${setup.sellers.size}`],
    ['/products', 'Products and prices', `${setup.products.size}`],
    ['/set-up/stalls', 'Stalls', `${setup.stalls.size}`],
    [
      '/set-up/sharing',
      'Sharing rule',
      `${season?.sharing?.weights === 'even' ? 'evenly' : 'by minutes worked'}, lifts ` +
        `${season?.sharing?.lift === true ? 'on' : 'off'}`,
    ],
    ['/set-up/hosts', 'Host shops', `${setup.hosts.size}`],
    ['/set-up/neighbours', 'Neighbour groups', `${setup.neighbours.size}`],
    ['/set-up/prize-steps', 'Prize steps', `${setup.levels.size}`],
    ['/prizes', 'Prizes and choices', 'who has reached what, and the order list'],
    [
      '/set-up/proceeds',
      'Proceeds steps',
      setup.proceeds === undefined ? 'not set up yet' : `${setup.proceeds.steps.length} steps`,
    ],
    ['/set-up/holds', 'Stop-sales', holds === 0 ? 'none' : `${holds} standing`],
  ];
  return (
    <Page title="Set-up" lead="Change a thing here and it holds for the whole book from then on.">
      <ClosedNotice />
      <ul class="task-list">
        {rows.map(([to, words, facts]) => (
          <li class="task-row" key={to}>
            <a class="task-link" href={to}>
              {words}
            </a>
            <span class="task-facts soft">{facts}</span>
          </li>
        ))}
      </ul>
    </Page>
  );
}
