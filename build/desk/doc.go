// Package desk shows a handbook on this machine while its lessons are written.
//
//	d := desk.New()
//	d.Put(desk.Pressing{Files: files})
//	look := func() string { return desk.Print(folder) }
//	go desk.Watch(ctx, time.Second/2, look(), look, again)
//	server := http.Server{Handler: d.Handler()} // answers below d.Path()
//
// Nothing is written to disk. A page follows the desk by a script that asks for
// the state of the desk and gets its answer when that changes: the page loads
// itself again when a pressing succeeded, and shows the problems when one did
// not.
//
// Other web sites may be open in the same browser, and other people may work on
// the same machine. So only this machine is answered, and only below a path that
// cannot be guessed; a request must name this machine, so that no name made
// elsewhere leads here, and where it says who made it (W3C, Fetch Metadata Request
// Headers; the Origin header of the Fetch Standard) that must be the desk itself
// or whoever typed its address. Answers ask not to be framed, embedded or stored.
package desk
