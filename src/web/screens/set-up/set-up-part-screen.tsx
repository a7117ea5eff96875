import { say } from '../../say.ts';
import '../../styles/tasks.css';
import './set-up.css';
import type { ComponentType } from 'preact';
import { ClosedNotice } from '../../parts/closed-season.tsx';
import { Page } from '../../parts/page.tsx';
import type { ScreenProps } from '../../routes.ts';
import { BankingPart } from './banking-part.tsx';
import { FamiliesPart } from './families-part.tsx';
import { HoldsPart } from './holds-part.tsx';
import { HostsPart, NeighboursPart } from './names-part.tsx';
import { PasteSellers } from './paste-sellers.tsx';
import { PastePriceList } from './price-list.tsx';
import { PrizeStepsPart } from './prize-steps-part.tsx';
import { ProceedsPart } from './proceeds-part.tsx';
import { SeasonPart } from './season-part.tsx';
import { SellersPart } from './sellers-part.tsx';
import { SharingPart } from './sharing-part.tsx';
import { StallsPart } from './stalls-part.tsx';

const PARTS: Readonly<Record<string, readonly [title: string, part: ComponentType]>> = {
  season: [say`Season and deadlines`, SeasonPart],
  banking: [say`The bank’s days`, BankingPart],
  paste: [say`Paste a seller list`, PasteSellers],
  'price-list': [say`Paste a price list`, PastePriceList],
  families: [say`Families`, FamiliesPart],
  sellers: [say`Sellers`, SellersPart],
  hosts: [say`Host shops`, HostsPart],
  neighbours: [say`Neighbour groups`, NeighboursPart],
  stalls: [say`Stalls`, StallsPart],
  sharing: [say`Sharing rule`, SharingPart],
  'prize-steps': [say`Prize steps`, PrizeStepsPart],
  proceeds: [say`Proceeds steps`, ProceedsPart],
  holds: [say`Stop-sales`, HoldsPart],
};

/** One part of the set-up, by its address. */
export function SetUpPartScreen({ params }: ScreenProps) {
  const found = PARTS[params.part ?? ''];
  const above = <a href="/set-up">{say`Set-up`}</a>;
  if (found === undefined) {
    return (
      <Page title={say`Set-up`} above={above}>
        <p>{say`There is no such part of the set-up.`}</p>
      </Page>
    );
  }
  const [title, Part] = found;
  return (
    <Page title={title} above={above}>
      <ClosedNotice />
      <Part />
    </Page>
  );
}
