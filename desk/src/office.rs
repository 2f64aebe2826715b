//! `stillbar office`: the server that phones exchange with, and who may use it.

use std::net::SocketAddr;
use std::path::PathBuf;

use clap::Args;
use stillbar_office::start::{self, Config, PORT};

/// `stillbar office`.
#[derive(Args)]
#[command(args_conflicts_with_subcommands = true, subcommand_negates_reqs = true)]
pub struct OfficeArgs {
    #[command(flatten)]
    serve: ServeArgs,
}

#[derive(Args)]
struct ServeArgs {
    /// The data folder: the office's key, and without other places the database and the photos
    #[arg(long, value_name = "DIR", required = true)]
    data: Option<PathBuf>,
    /// Where to answer; anything but this machine alone needs TLS or a proxy [default: 127.0.0.1:7463]
    #[arg(long, value_name = "ADDRESS:PORT")]
    listen: Option<SocketAddr>,
    /// PostgreSQL instead of SQLite: postgres://USER@HOST/NAME
    #[arg(long, value_name = "URL")]
    database: Option<String>,
    /// Where photos lie instead of in the data folder: file:///FOLDER, or s3://BUCKET in a build with S3
    #[arg(long, value_name = "URL")]
    objects: Option<String>,
    /// The office's key instead of DIR/office.key; processes over one database use the same
    #[arg(long, value_name = "FILE")]
    key: Option<PathBuf>,
    /// The address that phones and browsers use, if it is not the one that is answered on
    #[arg(long, value_name = "URL")]
    url: Option<String>,
    /// What the office is called
    #[arg(long, value_name = "TEXT", default_value = "Stillbar office")]
    name: String,
    /// The certificate chain, in PEM
    #[arg(long, value_name = "FILE", requires = "tls_key")]
    tls_cert: Option<PathBuf>,
    /// Its private key, in PEM
    #[arg(long, value_name = "FILE", requires = "tls_cert")]
    tls_key: Option<PathBuf>,
    /// A proxy in front speaks TLS and says in X-Forwarded-For who is calling
    #[arg(long)]
    behind_proxy: bool,
}

impl ServeArgs {
    fn config(self) -> Result<Config, String> {
        let data = self.data.ok_or("Name the data folder with --data.")?;
        let usual = Config::of(data);
        Ok(Config {
            listen: self.listen.unwrap_or_else(|| SocketAddr::new(usual.listen.ip(), PORT)),
            database: self.database,
            objects: self.objects,
            key: self.key,
            url: self.url,
            name: self.name,
            tls: self.tls_cert.zip(self.tls_key),
            behind_proxy: self.behind_proxy,
            ..usual
        })
    }
}

/// Does what was typed. The error is a sentence.
pub fn run(args: OfficeArgs) -> Result<(), String> {
    start::run(&args.serve.config()?)
}
