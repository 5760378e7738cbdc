/** The looks of panels, strip and pages, which the first picture does not have. In this order: later ones override. */
import './check.css';
import './strip.css';
import './ride.css';
import './post.css';
import './change.css';
import './setout.css';
import './score.css';
import './go.css';
import './forced-later.css';
