import { execFileSync } from 'node:child_process';

interface Process {
  readonly pid: number;
  readonly parent: number;
  readonly command: string;
}

function allProcesses(): Process[] {
  const listing = execFileSync('ps', ['-A', '-ww', '-o', 'pid=,ppid=,args='], {
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
  });
  return [...listing.matchAll(/^\s*(\d+)\s+(\d+)\s(.*)$/gm)].map(([, pid, parent, command]) => ({
    pid: Number(pid),
    parent: Number(parent),
    command: command ?? '',
  }));
}

/** The processes whose command line names the profile folder, and all that they started. */
export function processesOf(profile: string): number[] {
  const all = allProcesses();
  const found = new Set(
    all.filter(({ command }) => command.includes(profile)).map(({ pid }) => pid),
  );
  found.delete(process.pid);
  for (let grown = true; grown; ) {
    const children = all.filter(({ pid, parent }) => found.has(parent) && !found.has(pid));
    for (const { pid } of children) found.add(pid);
    grown = children.length > 0;
  }
  return [...found];
}

/** Sends a signal to each process; one that has just ended is no error. */
export function signal(pids: readonly number[], name: NodeJS.Signals): void {
  for (const pid of pids) {
    try {
      process.kill(pid, name);
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'ESRCH') throw error;
    }
  }
}

/** Ends every process of the profile at once and waits until none is left. */
export async function killAllOf(profile: string): Promise<void> {
  const deadline = Date.now() + 10_000;
  for (let left = processesOf(profile); left.length > 0; left = processesOf(profile)) {
    if (Date.now() > deadline) throw new Error(`processes ${left.join(', ')} do not end`);
    signal(left, 'SIGKILL');
    await new Promise((wait) => setTimeout(wait, 20));
  }
}
