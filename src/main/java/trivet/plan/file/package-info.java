/** Plans in YAML files: the starting points shipped, the copies of the site, and the approved texts. */
package trivet.plan.file;

import trivet.plan.Plans;

