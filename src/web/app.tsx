import type { QueryClient } from '@tanstack/react-query';
import { lazy, Suspense, useEffect, type ReactNode } from 'react';
import { Link, Redirect, Route, Switch, useRoute } from 'wouter';
import { tablesIn } from '../../shared/tables/in-own-units.js';
import { useFarm, useTables, type SavedFarm } from './api/queries.js';
import { askToday, useAskToday } from './api/today-queries.js';
import { useWhenIdle } from './api/when-idle.js';
import { AskingProvider } from './api/asking.js';
import { LeaveGuard } from './fields/leave-guard.js';
import { ExplainProvider } from './explain/explain-panel.js';
import TodayScreen from './screens/today/today-screen.js';
import { FarmShell } from './shell/farm-shell.js';
import { useAll, Working } from './shell/states.js';
import { useNotices } from './notices/use-notices.js';
import { SignalLine, WaitingOfAll } from './waiting/signal-line.js';

const FirstRun = lazy(() => import('./screens/first-run/first-run.js'));
const BatchList = lazy(() => import('./screens/batches/batch-list.js'));
const BatchScreen = lazy(() => import('./screens/batch/batch-screen.js'));
const CompareScreen = lazy(() => import('./screens/compare/compare-screen.js'));
const FeedScreen = lazy(() => import('./screens/feed/feed-screen.js'));
const ReceiptsScreen = lazy(() => import('./screens/feed/receipts-screen.js'));
const BuyingPrint = lazy(() => import('./screens/feed/buying-print.js'));
const FacilitiesScreen = lazy(() => import('./screens/facilities/facilities-screen.js'));
const FarmScreen = lazy(() => import('./screens/farm/farm-screen.js'));
const PastureScreen = lazy(() => import('./screens/pasture/pasture-screen.js'));
const WalkScreen = lazy(() => import('./screens/pasture/walk-screen.js'));
const MixScreen = lazy(() => import('./screens/mix/mix-screen.js'));
const LandScreen = lazy(() => import('./screens/pasture/land-screen.js'));
const SizesScreen = lazy(() => import('./screens/pasture/sizes-screen.js'));
const HerdTasksScreen = lazy(() => import('./screens/work/herd-tasks-screen.js'));
const NextDaysScreen = lazy(() => import('./screens/work/next-days-screen.js'));
const WorkPlanScreen = lazy(() => import('./screens/work/work-plan-screen.js'));
const ChancesScreen = lazy(() => import('./screens/work/chances-screen.js'));
const OwnScreen = lazy(() => import('./screens/work/own-screen.js'));
const AwayScreen = lazy(() => import('./screens/work/away-screen.js'));
const SheetScreen = lazy(() => import('./screens/work/sheet-screen.js'));
const MoveSheet = lazy(() => import('./screens/pasture/move-sheet.js'));
const RecordScreen = lazy(() => import('./screens/record/record-screen.js'));
const BinderPrint = lazy(() => import('./screens/record/binder-print.js'));
const SourcesScreen = lazy(() => import('./screens/sources/sources-screen.js'));
const StartScreen = lazy(() => import('./screens/start/start-screen.js'));
const TrustScreen = lazy(() => import('./screens/trust/trust-screen.js'));
const YearScreen = lazy(() => import('./screens/year/year-screen.js'));
const YearPrint = lazy(() => import('./screens/year/year-print.js'));
const PrintScreen = lazy(() => import('./screens/print/print-screen.js'));

/**
 * Asks for what a page opened on Today needs before anything is drawn of it: what ends when that has
 * come; nothing for other pages, and where all of it is at hand already.
 */
export function askAhead(client: QueryClient, path: string): Promise<unknown> | undefined {
  const farmId = /^\/farm\/([^/]+)\/today$/.exec(path)?.[1];
  return farmId === undefined ? undefined : askToday(client, farmId);
}

export function App() {
  return (
    <AskingProvider>
      <LeaveGuard>
        <Places />
      </LeaveGuard>
    </AskingProvider>
  );
}

function Places() {
  return (
    <Switch>
      <Route path="/">
        <Suspense fallback={<Waiting />}>
          <WaitingOfAll />
          <FirstRun />
        </Suspense>
      </Route>
      <Route path="/start">
        <Suspense fallback={<Waiting />}>
          <StartScreen />
        </Suspense>
      </Route>
      <Route path="/trust">
        <Suspense fallback={<Waiting />}>
          <TrustScreen />
        </Suspense>
      </Route>
      <Route path="/farm/:farmId/*?">
        {({ farmId }) => <OneFarm key={farmId} farmId={farmId} />}
      </Route>
      <Route>
        <Redirect to="/" />
      </Route>
    </Switch>
  );
}

function OneFarm({ farmId }: { farmId: string }) {
  const isToday = useTodayAhead(farmId);
  const isIdle = useWhenIdle();
  const tables = useTables({ isAsked: !isToday || isIdle });
  const asked = useFarm(farmId);
  const all = useAll(asked);
  if ('waiting' in all) return asked.error ? <NoFarm why={all.waiting} /> : all.waiting;
  const [farm] = all.data;
  return (
    <ExplainProvider tables={tables.data} farm={farm}>
      <Notices farm={farm} />
      <Suspense fallback={<Waiting />}>
        <Switch>
          <Route path="/farm/:farmId/today">
            <FarmShell farm={farm} notice={<SignalLine farm={farm} />}>
              <TodayScreen farm={farm} />
            </FarmShell>
          </Route>
          <Route>
            <FarmScreens farm={farm} />
          </Route>
        </Switch>
      </Suspense>
    </ExplainProvider>
  );
}

/** Drawn by nobody: it watches the alarms. */
function Notices({ farm }: { farm: SavedFarm }) {
  useNotices(farm);
  return null;
}

/** A farm that cannot be had says why, and leads to those that can. */
const NoFarm = ({ why }: { why: ReactNode }) => (
  <main className="shell-alone">
    <h1>Broodfold</h1>
    {why}
    <p>
      <Link href="/">All farms</Link>
    </p>
  </main>
);

/** Asks for the day and its screen at once where the page opens on it, not after the farm is there. */
function useTodayAhead(farmId: string): boolean {
  const [isToday] = useRoute('/farm/:farmId/today');
  const ask = useAskToday(farmId);
  useEffect(() => {
    if (isToday) ask();
  }, [isToday, ask]);
  return isToday;
}

/** Every screen that shows what the tables hold. */
function FarmScreens({ farm }: { farm: SavedFarm }) {
  const all = useAll(useTables());
  if ('waiting' in all) return all.waiting;
  const tables = tablesIn(farm.units, all.data[0]);
  const inShell = (screen: ReactNode) => (
    <FarmShell farm={farm} notice={<SignalLine farm={farm} />}>
      {screen}
    </FarmShell>
  );
  return (
    <Switch>
      <Route path="/farm/:farmId/batches">
        {inShell(<BatchList farm={farm} tables={tables} />)}
      </Route>
      <Route path="/farm/:farmId/batches/:batchId">
        {({ batchId }) =>
          inShell(
            <BatchScreen
              key={batchId}
              farm={farm}
              tables={tables}
              batchId={batchId === 'new' ? undefined : batchId}
            />,
          )
        }
      </Route>
      <Route path="/farm/:farmId/batches/:batchId/print/:sheet">
        {({ batchId, sheet }) => (
          <PrintScreen farm={farm} tables={tables} batchId={batchId} sheet={sheet} />
        )}
      </Route>
      <Route path="/farm/:farmId/compare/:batchId?">
        {({ batchId }) => inShell(<CompareScreen farm={farm} tables={tables} batchId={batchId} />)}
      </Route>
      <Route path="/farm/:farmId/feed/mix">
        {inShell(<MixScreen farm={farm} tables={tables} />)}
      </Route>
      <Route path="/farm/:farmId/facilities">
        {inShell(<FacilitiesScreen farm={farm} tables={tables} />)}
      </Route>
      <Route path="/farm/:farmId/pasture">
        {inShell(<PastureScreen farm={farm} tables={tables} />)}
      </Route>
      <Route path="/farm/:farmId/pasture/walk">
        {inShell(<WalkScreen farm={farm} tables={tables} />)}
      </Route>
      <Route path="/farm/:farmId/pasture/land">
        {inShell(<LandScreen farm={farm} tables={tables} />)}
      </Route>
      <Route path="/farm/:farmId/pasture/sizes">
        {inShell(<SizesScreen farm={farm} tables={tables} />)}
      </Route>
      <Route path="/farm/:farmId/work/herds">
        {inShell(<HerdTasksScreen farm={farm} tables={tables} />)}
      </Route>
      <Route path="/farm/:farmId/pasture/print">
        <MoveSheet farm={farm} tables={tables} />
      </Route>
      <Route path="/farm/:farmId/feed">{inShell(<FeedScreen farm={farm} tables={tables} />)}</Route>
      <Route path="/farm/:farmId/feed/receipts">{inShell(<ReceiptsScreen farm={farm} />)}</Route>
      <Route path="/farm/:farmId/feed/print">
        <BuyingPrint farm={farm} />
      </Route>
      <Route path="/farm/:farmId/year">{inShell(<YearScreen farm={farm} tables={tables} />)}</Route>
      <Route path="/farm/:farmId/year/print">
        <YearPrint farm={farm} />
      </Route>
      <Route path="/farm/:farmId/work">{inShell(<NextDaysScreen farm={farm} />)}</Route>
      <Route path="/farm/:farmId/work/plan">{inShell(<WorkPlanScreen farm={farm} />)}</Route>
      <Route path="/farm/:farmId/work/chances">{inShell(<ChancesScreen farm={farm} />)}</Route>
      <Route path="/farm/:farmId/work/own">
        {inShell(<OwnScreen farm={farm} tables={tables} />)}
      </Route>
      <Route path="/farm/:farmId/work/away">{inShell(<AwayScreen farm={farm} />)}</Route>
      <Route path="/farm/:farmId/work/away/:handoverId/sheet">
        {({ handoverId }) => <SheetScreen farm={farm} tables={tables} handoverId={handoverId} />}
      </Route>
      <Route path="/farm/:farmId/place">
        {inShell(<FarmScreen farm={farm} tables={tables} />)}
      </Route>
      <Route path="/farm/:farmId/record/print/:year">
        {({ year }) => <BinderPrint farm={farm} tables={tables} year={Number(year)} />}
      </Route>
      <Route path="/farm/:farmId/record">
        {inShell(<RecordScreen farm={farm} tables={tables} />)}
      </Route>
      <Route path="/farm/:farmId/sources">{inShell(<SourcesScreen tables={tables} />)}</Route>
      <Route>
        <Redirect to={`/farm/${farm.id}/today`} replace />
      </Route>
    </Switch>
  );
}

const Waiting = () => <Working label="Loading" />;
