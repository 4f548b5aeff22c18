import { useMessages } from '../shared/messages';
import { signInMessages } from './sign-in-messages';
import { LEAST_PASSWORD, type PasswordFault } from './sign-in-state';

/** What is wrong with a password, in words. */
export function usePasswordWords(): Readonly<Record<PasswordFault, string>> {
  const t = useMessages(signInMessages);
  return {
    needed: t.needed,
    short: t.passwordShort(LEAST_PASSWORD),
    long: t.passwordLong,
    'is-name': t.passwordIsName,
    unequal: t.unequal,
  };
}
