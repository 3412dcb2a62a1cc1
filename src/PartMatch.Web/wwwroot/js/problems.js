// The sorts of refusal: a still page, with the strip of the others.

import { drawStrip } from './page.js';

drawStrip();
