// Processor time, so that what else the machine does is not counted. That of all threads of this process:
// compiling and collecting garbage are in it.

/** Milliseconds of processor since this process began. */
export function cpuMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}
