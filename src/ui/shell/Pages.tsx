import { lazy } from 'react';
import { Link, Route, Switch } from 'wouter';
import { Empty } from '../kit/index.ts';

const loaders = {
  TodayPage: async () => ({ default: (await import('../today/TodayPage.tsx')).TodayPage }),
  RugsPage: async () => ({ default: (await import('../rugs/RugsPage.tsx')).RugsPage }),
  ReceivePage: async () => ({ default: (await import('../receive/ReceivePage.tsx')).ReceivePage }),
  DossierPage: async () => ({ default: (await import('../dossier/DossierPage.tsx')).DossierPage }),
  RoomsPage: async () => ({ default: (await import('../room/RoomsPage.tsx')).RoomsPage }),
  ClientsPage: async () => ({ default: (await import('../client/ClientsPage.tsx')).ClientsPage }),
  ClientPage: async () => ({ default: (await import('../client/ClientPage.tsx')).ClientPage }),
  WorkshopPage: async () => ({ default: (await import('../people/WorkshopPage.tsx')).WorkshopPage }),
  PeoplePage: async () => ({ default: (await import('../people/PeoplePage.tsx')).PeoplePage }),
  SafekeepingPage: async () => ({
    default: (await import('../safekeeping/SafekeepingPage.tsx')).SafekeepingPage,
  }),
  ShelfPage: async () => ({ default: (await import('../shelf/ShelfPage.tsx')).ShelfPage }),
  RulesPage: async () => ({ default: (await import('../rules/RulesPage.tsx')).RulesPage }),
  BenchPage: async () => ({ default: (await import('../bench/BenchPage.tsx')).BenchPage }),
  ConvertPage: async () => ({ default: (await import('../bench/ConvertPage.tsx')).ConvertPage }),
  MixPage: async () => ({ default: (await import('../bench/MixPage.tsx')).MixPage }),
  DryPage: async () => ({ default: (await import('../bench/DryPage.tsx')).DryPage }),
  WeavePage: async () => ({ default: (await import('../weave/WeavePage.tsx')).WeavePage }),
  CardPage: async () => ({ default: (await import('../card/CardPage.tsx')).CardPage }),
  BlotPage: async () => ({ default: (await import('../bench/BlotPage.tsx')).BlotPage }),
  ComparePage: async () => ({ default: (await import('../bench/ComparePage.tsx')).ComparePage }),
  PlanPage: async () => ({ default: (await import('../bench/PlanPage.tsx')).PlanPage }),
} as const;

const TodayPage = lazy(loaders.TodayPage);
const RugsPage = lazy(loaders.RugsPage);
const ReceivePage = lazy(loaders.ReceivePage);
const DossierPage = lazy(loaders.DossierPage);
const RoomsPage = lazy(loaders.RoomsPage);
const ClientsPage = lazy(loaders.ClientsPage);
const ClientPage = lazy(loaders.ClientPage);
const WorkshopPage = lazy(loaders.WorkshopPage);
const PeoplePage = lazy(loaders.PeoplePage);
const SafekeepingPage = lazy(loaders.SafekeepingPage);
const ShelfPage = lazy(loaders.ShelfPage);
const RulesPage = lazy(loaders.RulesPage);
const BenchPage = lazy(loaders.BenchPage);
const ConvertPage = lazy(loaders.ConvertPage);
const MixPage = lazy(loaders.MixPage);
const DryPage = lazy(loaders.DryPage);
const WeavePage = lazy(loaders.WeavePage);
const CardPage = lazy(loaders.CardPage);
const BlotPage = lazy(loaders.BlotPage);
const ComparePage = lazy(loaders.ComparePage);
const PlanPage = lazy(loaders.PlanPage);

/** Fetches every page while nothing else is going on, so that one opened later needs no line to the server. */
export function loadPages() {
  const waiting = setTimeout(async () => {
    // A page that cannot be fetched now is fetched when it is opened.
    for (const load of Object.values(loaders)) await load().catch(() => undefined);
  }, 3000);
  return () => clearTimeout(waiting);
}

/** Every page by its address; each is loaded when it is first opened. */
export function Pages() {
  return (
    <Switch>
      <Route path="/">
        <TodayPage />
      </Route>
      <Route path="/rugs">
        <RugsPage />
      </Route>
      <Route path="/receive">
        <ReceivePage />
      </Route>
      <Route path="/rugs/:rug">{({ rug }) => <DossierPage key={rug} rug={rug} />}</Route>
      <Route path="/rooms">
        <RoomsPage />
      </Route>
      <Route path="/rooms/:room">{({ room }) => <RoomsPage key={room} room={room} />}</Route>
      <Route path="/clients">
        <ClientsPage />
      </Route>
      <Route path="/clients/:client">{({ client }) => <ClientPage key={client} client={client} />}</Route>
      <Route path="/workshop">
        <WorkshopPage />
      </Route>
      <Route path="/people">
        <PeoplePage />
      </Route>
      <Route path="/safekeeping">
        <SafekeepingPage />
      </Route>
      <Route path="/shelf">
        <ShelfPage />
      </Route>
      <Route path="/rules">
        <RulesPage />
      </Route>
      <Route path="/bench">
        <BenchPage />
      </Route>
      <Route path="/bench/convert">
        <ConvertPage />
      </Route>
      <Route path="/bench/mix">
        <MixPage />
      </Route>
      <Route path="/bench/dry">
        <DryPage />
      </Route>
      <Route path="/bench/weave">
        <WeavePage />
      </Route>
      <Route path="/bench/card">
        <CardPage />
      </Route>
      <Route path="/bench/blot">
        <BlotPage />
      </Route>
      <Route path="/bench/compare">
        <ComparePage />
      </Route>
      <Route path="/bench/plan">
        <PlanPage />
      </Route>
      <Route>
        <div className="page narrow">
          <h1>No page here</h1>
          <Empty>
            <p>
              There is no page at this address. <Link href="/">Go to Today</Link>
            </p>
          </Empty>
        </div>
      </Route>
    </Switch>
  );
}
