/** What nobody has seen to in time is raised once a matter, told to the owner outside the kitchen, and counted. It judges nothing. */
package trivet.alarm;
