// Package desk shows a handbook on this machine while its lessons are written.
//
//	d := desk.New()
//	d.Put(desk.Pressing{Files: files})
//	go desk.Watch(ctx, time.Second/2, func() string { return desk.Print(folder) }, again)
//	server := http.Server{Handler: d.Handler()}
//
// Nothing is written to disk. A page follows the desk by a script that asks for
// the state of the desk and gets its answer when that changes: the page loads
// itself again when a pressing succeeded, and shows the problems when one did
// not. Only this machine is answered: a request must come from it, and must name
// it, so that a web page elsewhere can not read the handbook by a name of its own
// that leads here.
package desk
