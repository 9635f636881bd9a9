// The library of certificates, with what it needs to be there first, and Node's cryptography for its own.

import 'reflect-metadata';
import { webcrypto } from 'node:crypto';
import * as x509 from '@peculiar/x509';

x509.cryptoProvider.set(webcrypto as never);

export { x509 };
