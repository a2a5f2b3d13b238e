import { build, preview } from 'vite';

await build({ logLevel: 'warn' });
const server = await preview({
  preview: { host: 'localhost', port: Number(process.env['PORT'] ?? 4173) },
});
console.log(`\nEvenfall runs at ${server.resolvedUrls?.local[0]}\nControl-C ends it.`);
