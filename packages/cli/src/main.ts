import { Command } from 'commander';

/** Written in by the build from package.json, so that no file is read to answer `--version`. */
declare const UNDERLINER_VERSION: string;

const program = new Command('underliner')
    .description('Checks and compiles service plans written as .cover files.')
    .version(UNDERLINER_VERSION);

void program.parseAsync();
