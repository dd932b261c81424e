import { useState, useSyncExternalStore } from 'react';
import { Link } from 'wouter';
import { areOn, canNotify, turnOff, turnOn } from './notice-store.js';

/** Whether alarms come as notices on this device; and that nothing reaches a page that is closed. */
export function NoticeChoice({ farmId }: { farmId: string }) {
  const isOn = useSyncExternalStore(areOn.subscribe, areOn.get);
  const [can, setCan] = useState(canNotify);
  return (
    <details className="today-why today-notices">
      <summary>
        <span>Alarms as a notice: {isOn ? 'on' : 'off'}</span>
      </summary>
      {can === 'no' && (
        <p>
          This page can show none here. It can once you open it with https and put it on the home
          screen.
        </p>
      )}
      {can === 'refused' && (
        <p>Notices of this page are turned off on this device: allow them in its settings.</p>
      )}
      {(can === 'yes' || can === 'not-asked') && (
        <p>
          An alarm shows on this device while Broodfold is open, also behind other programs. Each
          comes once, and without sound unless it cannot wait.
        </p>
      )}
      <p>Nothing reaches Broodfold once it is closed. A calendar on your phone has them too.</p>
      {isOn ? (
        <button type="button" className="today-button" onClick={turnOff}>
          Turn off
        </button>
      ) : (
        (can === 'yes' || can === 'not-asked') && (
          <button
            type="button"
            className="today-button"
            onClick={() => void turnOn().then(setCan, () => setCan(canNotify()))}
          >
            Turn on
          </button>
        )
      )}
      <Link href={`/farm/${farmId}/work/away`}>Addresses for your calendar</Link>
    </details>
  );
}
