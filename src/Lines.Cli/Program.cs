using Lines.Cli;

return CommandLine.Run(args);
