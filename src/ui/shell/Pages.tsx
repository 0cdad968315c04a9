import { lazy } from 'react';
import { Link, Route, Switch } from 'wouter';
import { Empty } from '../kit/index.ts';

const TodayPage = lazy(async () => ({ default: (await import('../today/TodayPage.tsx')).TodayPage }));
const RugsPage = lazy(async () => ({ default: (await import('../rugs/RugsPage.tsx')).RugsPage }));
const ReceivePage = lazy(async () => ({ default: (await import('../receive/ReceivePage.tsx')).ReceivePage }));
const DossierPage = lazy(async () => ({ default: (await import('../dossier/DossierPage.tsx')).DossierPage }));
const ClientsPage = lazy(async () => ({ default: (await import('../client/ClientsPage.tsx')).ClientsPage }));
const ClientPage = lazy(async () => ({ default: (await import('../client/ClientPage.tsx')).ClientPage }));
const WorkshopPage = lazy(async () => ({
  default: (await import('../people/WorkshopPage.tsx')).WorkshopPage,
}));
const PeoplePage = lazy(async () => ({ default: (await import('../people/PeoplePage.tsx')).PeoplePage }));
const SafekeepingPage = lazy(async () => ({
  default: (await import('../safekeeping/SafekeepingPage.tsx')).SafekeepingPage,
}));
const BenchPage = lazy(async () => ({ default: (await import('../bench/BenchPage.tsx')).BenchPage }));
const ConvertPage = lazy(async () => ({ default: (await import('../bench/ConvertPage.tsx')).ConvertPage }));
const PlanPage = lazy(async () => ({ default: (await import('../bench/PlanPage.tsx')).PlanPage }));

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
      <Route path="/bench">
        <BenchPage />
      </Route>
      <Route path="/bench/convert">
        <ConvertPage />
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
