// Package output writes a pressed handbook to disk, whole or not at all.
//
//	kept, err := output.Write(ctx,
//		output.Edition{Folder: "handbook", Files: class, Single: true, Zip: true},
//		output.Edition{Folder: "handbook-staff", Files: staff})
//	if errors.Is(err, output.ErrNotOurs) { … } // somebody's files are in the way
//
// All editions, with the single files and zips beside them, are one set. It is
// made ready and synced in a hidden folder beside the handbook, the bench
// (.noonbook-press), together with a plan that names its parts. Then each part
// changes places with the old one, in one step of the file system where the
// system has such a step (Linux), and in two renames elsewhere. Last the old
// parts are removed, and the bench with them. A press that was cut off leaves its
// bench, and the next one goes on from there: a set that was not ready is dropped,
// one that was ready is put in place, or put back where somebody's files came in its
// way since. So each part is whole at any moment, and all are of one pressing once a
// press has ended. On systems that need two renames a
// part is missing where the press was cut off between the two, until the next.
//
// Only what noonbook wrote is replaced or removed. A folder must hold nothing but
// files that its list of checksums names, unchanged, and notes of a file manager, which
// go along into the new one; a single file or a zip ends
// with a seal; the bench must hold what its plan names. Everything is looked at
// before the work, again before the exchange, and each file once more before it
// is removed. What somebody saved in between is brought into the new handbook,
// and Write tells where it is.
//
// Two presses that write beside one another take turns; the lock is on the folder
// that they write in, and ends with the process. Where the file system has no
// locks they are not kept apart. An edition whose folder is a link is written
// where the link leads, with a bench of its own there.
//
// Single makes one HTML file of the pages, to mail, and Zip one file of the
// folder.
package output
