import type { ReactNode } from 'react';
import { Button } from '@mantine/core';
import { Failure } from '../shell/states.js';

/** A button that saves a row once, and says where that failed. */
export function Touch({
  isReady,
  save,
  set,
  children,
}: {
  isReady: boolean;
  save: { isSuccess: boolean; isPending: boolean; error: Error | null };
  set: () => void;
  children: ReactNode;
}) {
  return (
    <>
      <Button
        className="no-print"
        disabled={!isReady || save.isSuccess}
        loading={save.isPending}
        onClick={set}
      >
        {children}
      </Button>
      <Failure error={save.error} />
    </>
  );
}
