#!/usr/bin/env node
import { checkNode, ensureBuilt, ensureInstalled, runBundled } from '../scripts/ground.mjs';

const args = process.argv.slice(2);
checkNode();
ensureInstalled();
ensureBuilt('server');
if (!args.includes('--help') && (args[0] === 'serve' || args[0] === 'demo')) ensureBuilt('ui');
await runBundled(args);
