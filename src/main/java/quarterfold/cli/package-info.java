/**
 * The command line: one small class a command, each of which parses, calls, prints and gives an
 * exit code.
 *
 * <p>Start at {@link quarterfold.cli.Main}. Results go to standard output, messages to standard
 * error. Joins every other room and decides nothing.
 */
@NullMarked
package quarterfold.cli;

import org.jspecify.annotations.NullMarked;
