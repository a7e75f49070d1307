/** Draws the icon at the sizes the packages need, with the Chromium on this machine. */
import fs from 'node:fs';
import path from 'node:path';
import { chromium } from 'playwright-core';

const here = import.meta.dirname;
const svg = fs.readFileSync(path.join(here, 'icon.svg'), 'utf8');
const executablePath = process.env.REEFWRIGHT_CHROMIUM ?? '/usr/bin/chromium';
const args = process.getuid?.() === 0 ? ['--no-sandbox', '--disable-gpu'] : ['--disable-gpu'];
const browser = await chromium.launch({ executablePath, args });
const page = await browser.newPage({ viewport: { width: 1024, height: 1024 } });
await page.setContent(`<style>body{margin:0}svg{display:block;width:1024px;height:1024px}</style>${svg}`);
await page.screenshot({ path: path.join(here, 'icon.png') });
await browser.close();
