import type { ReactNode } from 'react';
import { SetupNav } from '../setup/setup-nav';
import '../setup/setup-view.css';
import './account.css';
import './people.css';
import './sign-in.css';

export type AccessList = 'people' | 'keys' | 'audit' | 'changes';

/** A list of Setup that is for owners, beside the names of the other lists. */
export function AccessLayout({ list, children }: { list: AccessList; children: ReactNode }) {
  return (
    <div className="setup">
      <SetupNav current={list} />
      <div className="setup-content">{children}</div>
    </div>
  );
}
