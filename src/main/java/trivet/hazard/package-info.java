/** What makes a hazard significant and a step a critical control point: published trees and matrices, routed as published. */
package trivet.hazard;
