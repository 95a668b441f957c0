using Ohmstead.Mutants;

// A worker is loaded beside the tests and without the compiler: it must not so much as name what the drawing needs.
return args is [Worker.Word] ? await Worker.RunAsync() : Drawing.Run(args);
