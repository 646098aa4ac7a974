namespace HairClinic.EmbeddedPostgres;

/// <summary>The program's own PostgreSQL cannot run. The message is for the person who starts the program and says what to do.</summary>
public sealed class EmbeddedServerException(string message) : Exception(message);
