using FluentValidation;
using PartMatch.Storage.Books;
using PartMatch.Storage.Families;
using PartMatch.Storage.LookAlikes;
using PartMatch.Storage.Parts;
using PartMatch.Web.Host;
using PartMatch.Web.Http;

var builder = WebApplication.CreateBuilder(new WebApplicationOptions { Args = args, ContentRootPath = ServerDefaults.FindContentRoot() });
builder.AddServerDefaults();
builder.Services.ConfigureHttpJsonOptions(options => JsonRules.Apply(options.SerializerOptions));
builder.Services.AddValidatorsFromAssemblyContaining<Program>(includeInternalTypes: true);

builder.Services.AddSingleton<OpenedBase>();
builder.Services.AddSingleton(services => services.GetRequiredService<OpenedBase>().Database);
builder.Services.AddSingleton<BookStore>();
builder.Services.AddSingleton<FamilyStore>();
builder.Services.AddSingleton<PartStore>();
builder.Services.AddSingleton<NumberStore>();

await using var app = builder.Build();
app.UseMiddleware<SecurityHeaders>();
app.UseMiddleware<RequestLog>();
app.UseMiddleware<Problems>();
app.UseMiddleware<HostCheck>();
app.UseMiddleware<WriteCheck>();
app.UseDefaultFiles();
app.UseStaticFiles();
app.UseRouting();

return await Server.RunAsync(app);
